import { finite, InputError } from '../../core/index.ts'
import { Covariance } from '../covariance.ts'
import { driftOf } from '../drift.ts'
import type { KrigingKind } from '../drift.ts'
import type { Sample, VariogramModel } from '../model.ts'
import { solveForward4 } from '../linear/interleaved.ts'
import { gatherSamples } from '../samples.ts'
import type { Samples } from '../samples.ts'
import { fillToSupport } from '../support.ts'
import type { Support } from '../support.ts'
import { betweenPanels } from './between-panels.ts'
import { factorFor } from './krige-plain.ts'
import { KrigingSystem } from './kriging-system.ts'
import { subtractProducts } from '../linear/subtract-products.ts'
import type { Panel } from './panel.ts'

/** Columns of the covariance worked on at a time, so that their rows stay in the cache. */
const COLUMNS = 64

export interface PanelOptions {
  readonly kind: KrigingKind
  /** The known mean, for simple kriging; 0 unless given. */
  readonly mean?: number
  /** Variance of each sample's error of measurement, per point; 0 is exact. */
  readonly errorVariance?: readonly number[]
}

/** Averages over panels, estimated together. */
export interface KrigedPanels {
  readonly means: Float64Array
  /** Covariance of the estimation errors, m x m row-major, symmetric: what a total over panels needs. */
  readonly covariance: Float64Array
  readonly merged: number
  readonly regularised: boolean
}

/**
 * Kriging of the averages over many panels at once, from all samples, with the covariances of their errors.
 *
 * Neighbouring panels err together: a total's variance is the double sum over this matrix, far more than the sum of the panels'
 * own variances. The nugget averages out within panels and is left out throughout.
 * @param points  rows of [x, y, value]; not modified
 * @param panels  see `rectangularPanels` and `polygonPanel`; may be empty; may overlap
 * @returns m means and the m x m covariance; its diagonal is the kriging variance of `krige` with the same block
 * @throws as `krige`
 * Source: Chiles, J.-P. and Delfiner, P. (2012) Geostatistics: modeling spatial uncertainty, 2nd ed., 3.4 and 3.5; the joint form is
 * the Gaussian conditional covariance with the drift's uncertainty added.
 */
export function krigePanels(points: readonly Sample[], panels: readonly Panel[], model: VariogramModel, options: PanelOptions): KrigedPanels {
  const samples = gatherSamples(points, options.errorVariance)
  const covariance = new Covariance(model, samples.coincidence)
  const mean = options.kind === 'simple' ? finite(options.mean ?? 0, 'mean') : 0
  const drift = driftOf(options.kind, samples, panels.length)
  const [n, m, p] = [samples.count, panels.length, drift.size]
  const system = new KrigingSystem(n, p)
  const regularised = factorFor({ samples, covariance, drift, mean }, system, Int32Array.from({ length: n }, (_, i) => i), 'points')
  const means = new Float64Array(m)
  // Rows q and g per panel: the part of each that the samples take away, and the part that not knowing the drift gives back.
  const taken = new Float64Array(m * n)
  const given = new Float64Array(m * p)
  const four = new Float64Array(4 * n)
  panels.forEach(({ x, y, support }, i) => {
    finite(x, `panels[${i}].x`)
    finite(y, `panels[${i}].y`)
    if (support.weights.length === 0) throw new InputError(`panels[${i}].support`, 0, 'one point or more')
    if (i % 4 === 0) reduceFour(system, covariance, samples, panels, i, four)
    const q = taken.subarray(i * n, (i + 1) * n)
    for (let k = 0; k < n; k++) q[k] = four[4 * k + i % 4]!
    const f = meanDrift(drift, i, x, y, support)
    system.reduceDrift(q, f)
    means[i] = mean + system.mean(q, f)
    given.set(f, i * p)
  })
  const result = betweenPanels(covariance, panels, samples.coincidence)
  for (let column = 0; column < m; column += COLUMNS) subtractProducts(result, m, taken, n, m, column, Math.min(column + COLUMNS, m), n)
  for (let a = 0; a < m; a++) {
    for (let b = 0; b <= a; b++) {
      let value = result[a * m + b]!
      for (let j = 0; j < p; j++) value += given[a * p + j]! * given[b * p + j]!
      result[a * m + b] = a === b ? Math.max(0, value) : value
      result[b * m + a] = result[a * m + b]!
    }
  }
  return { means, covariance: result, merged: points.length - n, regularised }
}

/** L^-1 c of four panels from `first` on, interleaved (the last repeated where fewer are left). */
function reduceFour(system: KrigingSystem, covariance: Covariance, samples: Samples, panels: readonly Panel[], first: number, four: Float64Array): void {
  for (let r = 0; r < 4; r++) {
    const { x, y, support } = panels[Math.min(first + r, panels.length - 1)]!
    fillToSupport(covariance, support, four, r, 4, samples.xs, samples.ys, 0, samples.count, x, y)
  }
  solveForward4(system.l, system.n, system.n, four)
}

/** The drift functions averaged over a support. */
function meanDrift(drift: ReturnType<typeof driftOf>, index: number, x: number, y: number, support: Support): Float64Array {
  const sum = new Float64Array(drift.size)
  const at = new Float64Array(drift.size)
  support.weights.forEach((weight, j) => {
    drift.at(index, x + support.dxs[j]!, y + support.dys[j]!, at)
    for (let k = 0; k < sum.length; k++) sum[k]! += weight * at[k]!
  })
  return sum
}

/**
 * Mean and variance of a sum over panels, each times a factor (its tonnes, say, which are taken as known).
 * @throws InputError when the factors are not one finite number per panel
 */
export function totalOver(panels: KrigedPanels, factors: readonly number[]): { readonly mean: number, readonly variance: number } {
  const m = panels.means.length
  if (factors.length !== m) throw new InputError('factors', factors.length, `one factor per panel, ${m} in all`)
  factors.forEach((factor, i) => finite(factor, `factors[${i}]`))
  let mean = 0
  let variance = 0
  for (let a = 0; a < m; a++) {
    mean += factors[a]! * panels.means[a]!
    for (let b = 0; b < m; b++) variance += factors[a]! * factors[b]! * panels.covariance[a * m + b]!
  }
  return { mean, variance: Math.max(0, variance) }
}
