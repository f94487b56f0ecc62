import { solveBackward } from '../linear/cholesky.ts'
import { inverseDiagonal } from '../linear/inverse-diagonal.ts'
import { factorFor } from './krige-plain.ts'
import { dot, KrigingSystem } from './kriging-system.ts'
import { NeighbourGrid } from './neighbour-grid.ts'
import type { Problem } from './options.ts'

/** Per (merged) sample: its estimate from the others, and that estimate's variance (of the field, without the sample's own error). */
export interface LeftOut { readonly means: Float64Array, readonly variances: Float64Array }

/**
 * Every sample left out in turn, from one factorisation. With B = L^-T (I - Q Q^T) L^-1:
 * residual_i = (B z)_i / B_ii, and 1 / B_ii is the variance of estimate and observation together.
 */
export function leaveOneOutAll(problem: Problem): LeftOut {
  const { samples, drift } = problem
  const n = samples.count
  const system = new KrigingSystem(n, drift.size)
  factorFor(problem, system, Int32Array.from({ length: n }, (_, i) => i), 'points')
  const bz = system.y
  for (const q of system.q) {
    const along = dot(q, bz, n)
    for (let i = 0; i < n; i++) bz[i]! -= along * q[i]!
  }
  solveBackward(system.l, n, n, bz)
  for (const q of system.q) solveBackward(system.l, n, n, q)
  const diagonal = inverseDiagonal(system.l, n)
  for (const q of system.q) for (let i = 0; i < n; i++) diagonal[i]! -= q[i]! ** 2
  return {
    means: samples.values.map((value, i) => value - bz[i]! / diagonal[i]!),
    variances: diagonal.map((b, i) => Math.max(0, 1 / b - samples.errors[i]!)),
  }
}

/** Every sample left out in turn, each estimated from its k nearest others. */
export function leaveOneOutNear(problem: Problem, k: number): LeftOut {
  const { samples, drift, covariance, mean } = problem
  const system = new KrigingSystem(k, drift.size)
  const means = new Float64Array(samples.count)
  const variances = new Float64Array(samples.count)
  const f = new Float64Array(drift.size)
  const c = new Float64Array(k)
  const grid = NeighbourGrid.of(samples.xs, samples.ys)
  for (let i = 0; i < samples.count; i++) {
    const [x, y] = [samples.xs[i]!, samples.ys[i]!]
    const chosen = grid.found.subarray(0, grid.nearest(x, y, k, i))
    factorFor(problem, system, chosen, 'points')
    chosen.forEach((other, j) => { c[j] = covariance.structured(samples.xs[other]! - x, samples.ys[other]! - y) })
    for (let j = 0; j < drift.size; j++) f[j] = drift.columns[j]![i]!
    system.reduce(c, f)
    means[i] = mean + system.mean(c, f)
    variances[i] = system.variance(c, f, covariance.sill)
  }
  return { means, variances }
}
