import { backwardSolve, choleskyInPlace, forwardSolve } from '../core/index.ts'
import type { Draws, VeinPoint } from '../core/index.ts'
import { between, generalisedMean, reaching, sampleCorrelations, sampleFactor } from './log-field.ts'
import type { FieldNode, FieldPosterior } from './log-field.ts'

/** A block of ground as the few points that stand for it, with equal weight. */
export interface FieldBlock { readonly points: readonly VeinPoint[] }

export interface PlainOutcomes {
  /** One row an outcome, one column a block: the block's average of the quantity itself (not of its log). */
  readonly values: readonly Float64Array[]
  /** The standard normal numbers each outcome was made from; hand them to a companion field that moves with this one. */
  readonly noise: readonly Float64Array[]
}

export interface Companion { readonly noise: readonly Float64Array[], readonly correlation: number }

/** How many outcomes each description of the ground gets: systematic resampling, so that their numbers follow the weights. */
function shares(nodes: readonly FieldNode[], slots: number, start: number): { node: FieldNode, slots: number }[] {
  const result: { node: FieldNode, slots: number }[] = []
  let reached = 0
  let next = (start) / slots
  for (const node of nodes) {
    reached += node.weight
    let count = 0
    while (next < reached && count < slots) { count++; next += 1 / slots }
    if (count > 0) result.push({ node, slots: count })
  }
  return result
}

/** Correlations of the reaching part at one range: samples with each block, and blocks with blocks (lower triangle by rows). */
interface Correlations { readonly samples: Float64Array, readonly cross: readonly Float64Array[], readonly blocks: Float64Array }

function correlationsAt(range: number, posterior: FieldPosterior, blocks: readonly FieldBlock[]): Correlations {
  const m = blocks.length
  const r = (p: VeinPoint, q: VeinPoint) => Math.exp(-between(p, q) / range)
  const middles = blocks.map(middle)
  const sizes = blocks.map((b, i) => Math.max(...b.points.map(p => between(p, middles[i]!))))
  const matrix = new Float64Array(m * m)
  for (let i = 0; i < m; i++) {
    const a = blocks[i]!.points
    for (let j = 0; j <= i; j++) {
      const b = blocks[j]!.points
      // Blocks far apart beside their size: the middle stands for the average.
      if (between(middles[i]!, middles[j]!) > 4 * (sizes[i]! + sizes[j]!) && i !== j) {
        matrix[i * m + j] = r(middles[i]!, middles[j]!)
        continue
      }
      let sum = 0
      for (const p of a) for (const q of b) sum += r(p, q)
      matrix[i * m + j] = sum / (a.length * b.length)
    }
  }
  return {
    samples: sampleCorrelations(posterior.samples, range), blocks: matrix,
    cross: blocks.map(({ points }) => Float64Array.from(posterior.samples, s => points.reduce((sum, p) => sum + r(p, s.at), 0) / points.length)),
  }
}

/** Conditional means and covariance factor of the blocks' average logs under one description, the doubt about the mean included. */
function conditional(posterior: FieldPosterior, node: FieldNode, correlations: Correlations) {
  const { samples } = posterior
  const n = samples.length
  const m = correlations.cross.length
  const sill = reaching(node)
  const factor = sampleFactor(samples, correlations.samples, node)
  const { mean, ones, precision } = generalisedMean(samples, factor)
  const weights = Float64Array.from(samples, s => s.logValue - mean)
  forwardSolve(factor, n, weights)
  backwardSolve(factor, n, weights)
  const centre = new Float64Array(m)
  const lift = new Float64Array(m)
  const whitened = correlations.cross.map((row, b) => {
    const k = row.map(r => r * sill)
    let value = mean
    let carried = 0
    for (let i = 0; i < n; i++) { value += weights[i]! * k[i]!; carried += ones[i]! * k[i]! }
    centre[b] = value
    lift[b] = 1 - carried
    forwardSolve(factor, n, k)
    return k
  })
  const covariance = new Float64Array(m * m)
  const within = new Float64Array(m)
  for (let i = 0; i < m; i++) {
    const wi = whitened[i]!
    within[i] = node.variance - sill * correlations.blocks[i * m + i]! // what varies inside the block: nugget and short reach
    for (let j = 0; j <= i; j++) {
      const wj = whitened[j]!
      let sum = sill * correlations.blocks[i * m + j]! + lift[i]! * lift[j]! / precision
      for (let k = 0; k < n; k++) sum -= wi[k]! * wj[k]!
      covariance[i * m + j] = sum
    }
    covariance[i * m + i]! += 1e-9 * node.variance // rounding only: keeps two blocks at one place factorable
  }
  choleskyInPlace(covariance, m)
  return { centre, covariance, within }
}

function middle(block: FieldBlock): VeinPoint {
  const n = block.points.length
  return { along: block.points.reduce((s, p) => s + p.along, 0) / n, down: block.points.reduce((s, p) => s + p.down, 0) / n }
}

/**
 * Equally likely outcomes for the blocks, given the samples: the description of the ground is drawn by its weight, the field then drawn
 * exactly (Cholesky) around its kriged logs, and each block's average of the quantity taken as exp(average log + half of what varies inside).
 *
 * That last step holds lognormality at block support (the usual assumption for small blocks); docs/methods/grade.md says when it strains.
 * @param count outcomes; `slots` distinct draws of the description share them
 * @param companion noise of another field and its correlation with this one, so that the two move together
 * @returns values in the unit whose logs the samples hold
 */
export function fieldOutcomesPlain(
  posterior: FieldPosterior, blocks: readonly FieldBlock[], count: number, draws: Draws, options: { slots?: number, companion?: Companion } = {},
): PlainOutcomes {
  const m = blocks.length
  const slots = Math.min(options.slots ?? 40, count)
  const values: Float64Array[] = []
  const noise: Float64Array[] = []
  const parts = shares(posterior.nodes, slots, draws.uniform())
  const known = new Map<number, Correlations>()
  const at = (range: number) => {
    const found = known.get(range) ?? correlationsAt(range, posterior, blocks)
    known.set(range, found)
    return found
  }
  let used = 0
  for (const part of parts) {
    used += part.slots
    const upTo = Math.round(count * used / slots)
    const { centre, covariance, within } = conditional(posterior, part.node, at(part.node.range))
    while (values.length < upTo) {
      const theirs = options.companion?.noise[values.length]
      const rho = options.companion?.correlation ?? 0
      const z = Float64Array.from({ length: m }, (_, i) => theirs ? rho * theirs[i]! + Math.sqrt(1 - rho * rho) * draws.normal() : draws.normal())
      const row = new Float64Array(m)
      for (let i = 0; i < m; i++) {
        let sum = centre[i]! + within[i]! / 2
        for (let k = 0; k <= i; k++) sum += covariance[i * m + k]! * z[k]!
        row[i] = Math.exp(sum)
      }
      values.push(row)
      noise.push(z)
    }
  }
  return { values, noise }
}
