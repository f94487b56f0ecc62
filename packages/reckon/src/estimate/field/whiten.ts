import type { FieldNode, LogSample } from './node.ts'
import { coarseToFine } from './coarse-to-fine.ts'
import { ExponentialTable } from './exponential-table.ts'
import { nearestEarlier } from './nearest-earlier.ts'

/**
 * The likelihood of many samples piece by piece: each given the nearest ones before it, coarse to fine. Cost grows with the number of
 * samples, not with its cube.
 * Source: Vecchia, J. R. Statist. Soc. B 50 (1988) 297; Stein, Chi and Welty, J. R. Statist. Soc. B 66 (2004) 275 (restricted likelihood) (from memory).
 */
export class PieceByPiece {
  private readonly order: Int32Array
  private readonly near: Int32Array
  private readonly counts: Int32Array
  private readonly tables = new Map<number, Float64Array>()
  private readonly xs: Float64Array
  private readonly ys: Float64Array

  constructor(private readonly samples: readonly LogSample[], private readonly most: number) {
    this.xs = Float64Array.from(samples, s => s.at.along)
    this.ys = Float64Array.from(samples, s => s.at.down)
    this.order = coarseToFine(this.xs, this.ys, samples.map((_, i) => `${i}`))
    const earlier = nearestEarlier(this.xs, this.ys, this.order, most)
    this.near = earlier.neighbours
    this.counts = earlier.counts
  }

  /** Correlations each step needs, kept for a range: of its neighbours with each other, then with itself. */
  private correlations(range: number): Float64Array {
    const kept = this.tables.get(range)
    if (kept) return kept
    const { order, near, counts, most, xs, ys } = this
    const table = new ExponentialTable(range), per = (most * (most + 1)) / 2
    const made = new Float64Array(order.length * per)
    for (let step = 0; step < order.length; step++) {
      const i = order[step]!, k = counts[step]!, base = step * most
      let at = step * per
      for (let a = 0; a < k; a++) {
        const p = near[base + a]!
        for (let b = 0; b < a; b++) made[at++] = table.at(xs[p]! - xs[near[base + b]!]!, ys[p]! - ys[near[base + b]!]!)
      }
      for (let a = 0; a < k; a++) made[at++] = table.at(xs[i]! - xs[near[base + a]!]!, ys[i]! - ys[near[base + a]!]!)
    }
    this.tables.set(range, made)
    return made
  }

  /** Log of the restricted likelihood up to a constant, the generalised mean, its precision, and the weights that make it. */
  whiten(node: Omit<FieldNode, 'weight'>, wantWeights = false) {
    const { samples, order, near, counts, most } = this
    const correlations = this.correlations(node.range), per = (most * (most + 1)) / 2, stride = most + 1
    const sill = node.variance * (1 - node.nuggetShare)
    const l = new Float64Array(stride * stride), y = new Float64Array(stride), one = new Float64Array(stride)
    const weights = new Float64Array(wantWeights ? samples.length : 0), b = new Float64Array(stride)
    let logs = 0, yy = 0, y1 = 0, precision = 0
    for (let step = 0; step < order.length; step++) {
      const i = order[step]!, k = counts[step]!, base = step * most
      let at = step * per
      for (let r = 0; r <= k; r++) {
        const site = r === k ? i : near[base + r]!, row = r * stride
        const diagonal = node.variance + samples[site]!.errorVariance
        let pivot = diagonal, value = samples[site]!.logValue, unit = 1
        for (let c = 0; c < r; c++) {
          let sum = sill * correlations[at++]!
          for (let q = 0; q < c; q++) sum -= l[row + q]! * l[c * stride + q]!
          const element = sum / l[c * stride + c]!
          l[row + c] = element
          pivot -= element * element
          value -= element * y[c]!
          unit -= element * one[c]!
        }
        const root = Math.sqrt(Math.max(pivot, 1e-12 * diagonal))
        l[row + r] = root
        y[r] = value / root
        one[r] = unit / root
      }
      const root = l[k * stride + k]!
      logs += 2 * Math.log(root)
      yy += y[k]! * y[k]!
      y1 += y[k]! * one[k]!
      precision += one[k]! * one[k]!
      if (!wantWeights) continue
      // Row of the whitening: 1 / root for itself, less what its neighbours foretell.
      for (let c = 0; c < k; c++) b[c] = l[k * stride + c]!
      for (let c = k - 1; c >= 0; c--) {
        const x = b[c]! / l[c * stride + c]!
        b[c] = x
        for (let q = 0; q < c; q++) b[q]! -= l[c * stride + q]! * x
      }
      weights[i]! += one[k]! / root
      for (let c = 0; c < k; c++) weights[near[base + c]!]! -= one[k]! * b[c]! / root
    }
    const mean = y1 / precision
    return { mean, precision, weights: weights.map(w => w / precision), logLikelihood: -(logs + Math.log(precision) + yy - mean * y1) / 2 }
  }
}
