import { finite, InputError } from '../../core/index.ts'
import { Covariance } from '../covariance.ts'
import { driftOf } from '../drift.ts'
import type { KrigingKind } from '../drift.ts'
import type { Sample, VariogramModel } from '../model.ts'
import { gatherSamples } from '../samples.ts'
import { covarianceBetween, fillToSupport } from '../support.ts'
import type { Support } from '../support.ts'
import { factorFor } from './krige-plain.ts'
import { dot, KrigingSystem } from './kriging-system.ts'
import type { Panel } from './panel.ts'

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
  const reduced: Float64Array[] = []
  const drifts: Float64Array[] = []
  panels.forEach(({ x, y, support }, i) => {
    finite(x, `panels[${i}].x`)
    finite(y, `panels[${i}].y`)
    if (support.weights.length === 0) throw new InputError(`panels[${i}].support`, 0, 'one point or more')
    const c = new Float64Array(n)
    const f = meanDrift(drift, i, x, y, support)
    fillToSupport(covariance, support, c, 0, 1, samples.xs, samples.ys, 0, n, x, y)
    system.reduce(c, f)
    means[i] = mean + system.mean(c, f)
    reduced.push(c)
    drifts.push(f)
  })
  const between = betweenPanels(covariance, panels, samples.coincidence)
  const result = new Float64Array(m * m)
  for (let a = 0; a < m; a++) {
    for (let b = 0; b <= a; b++) {
      const value = between(a, b) - dot(reduced[a]!, reduced[b]!, n) + dot(drifts[a]!, drifts[b]!, p)
      result[a * m + b] = a === b ? Math.max(0, value) : value
      result[b * m + a] = result[a * m + b]!
    }
  }
  return { means, covariance: result, merged: points.length - n, regularised }
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

/** Covariance of the field's averages over two panels; for panels of one support it is worked out once per offset. */
function betweenPanels(covariance: Covariance, panels: readonly Panel[], coincidence: number): (a: number, b: number) => number {
  const known = new Map<Support, Map<number, Map<number, number>>>()
  return (a, b) => {
    const [first, second] = [panels[a]!, panels[b]!]
    const work = () => covarianceBetween(covariance, first.support, first.x, first.y, second.support, second.x, second.y)
    if (first.support !== second.support || coincidence === 0) return work()
    const columns = entry(known, first.support, () => new Map<number, Map<number, number>>())
    const rows = entry(columns, Math.round((first.x - second.x) / coincidence), () => new Map<number, number>())
    return entry(rows, Math.round((first.y - second.y) / coincidence), work)
  }
}

function entry<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  let value = map.get(key)
  if (value === undefined) map.set(key, value = make())
  return value
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
