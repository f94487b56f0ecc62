import { invertLower } from '../linear/invert-lower.ts'
import { quadraticForm4, solveForward4 } from '../linear/interleaved.ts'
import { solveBackward } from '../linear/cholesky.ts'
import { fillToSupport } from '../support.ts'
import type { Estimates } from './krige-plain.ts'
import { factorFor } from './krige-plain.ts'
import { dot, KrigingSystem } from './kriging-system.ts'
import { NeighbourGrid } from './neighbour-grid.ts'
import type { Problem } from './options.ts'
import { middleOf, tilesOf } from './tiles.ts'

/** The inverse is used in place of the factor only where it costs at most six of sixteen digits. */
const WELL_CONDITIONED = 1e6
/** The inverse costs about n^3 / 2: worth it for no fewer targets than samples, and not beyond this many samples. */
const MOST_SAMPLES = 1000
/** Tile side as a share of the reach: small, so that the samples within reach of a tile are hardly more than those of each target. */
const TILE = 1 / 8

/**
 * Kriging every target from all samples: one factorisation, then four targets at a time.
 *
 * Where covariances end at a distance (spherical structures) and K is well conditioned, only the samples within reach of a tile of
 * targets count: c^T K^-1 c over those alone. Otherwise q = L^-1 c, all of it.
 */
export function krigeAll(problem: Problem): Estimates {
  const { samples, targets, drift, covariance } = problem
  const n = samples.count
  const system = new KrigingSystem(n, drift.size)
  const regularised = factorFor(problem, system, Int32Array.from({ length: n }, (_, i) => i), 'points')
  const dual = dualOf(system)
  const means = new Float64Array(targets.count)
  const variances = new Float64Array(targets.count)
  const worth = covariance.reach < Infinity && !regularised && n <= Math.min(MOST_SAMPLES, targets.count)
  const inverse = worth ? wellConditionedInverse(problem, system) : undefined
  if (inverse !== undefined) withinReach(problem, system, dual, inverse, means, variances)
  else byFactor(problem, system, dual, means, variances)
  return { means, variances, regularised }
}

/** The means alone, without variances: mean = drift . f + sample . c and no solve per target. */
export function meansOfAll(problem: Problem): Float64Array {
  const { samples, targets, drift, mean, covariance, support } = problem
  const n = samples.count
  const system = new KrigingSystem(n, drift.size)
  factorFor(problem, system, Int32Array.from({ length: n }, (_, i) => i), 'points')
  const dual = dualOf(system)
  const c = new Float64Array(n)
  const f = new Float64Array(drift.size)
  const means = new Float64Array(targets.count)
  for (let t = 0; t < targets.count; t++) {
    const [x, y] = [targets.xs[t]!, targets.ys[t]!]
    fillToSupport(covariance, support, c, 0, 1, samples.xs, samples.ys, 0, n, x, y)
    drift.at(t, x, y, f)
    means[t] = mean + dot(dual.sample, c, n) + dot(dual.drift, f, drift.size)
  }
  return means
}

/** mean = drift . f + sample . c, for a target's drift values f and covariances c. */
interface Dual { readonly sample: Float64Array, readonly drift: Float64Array }

function dualOf(system: KrigingSystem): Dual {
  const { n, p, q, r, y, l } = system
  const drift = new Float64Array(p)
  const sample = y.slice(0, n)
  for (let j = 0; j < p; j++) {
    drift[j] = dot(q[j]!, y, n)
    for (let k = 0; k < n; k++) sample[k]! -= drift[j]! * q[j]![k]!
  }
  solveBackward(l, n, n, sample)
  for (let i = p - 1; i >= 0; i--) {
    for (let j = i + 1; j < p; j++) drift[i]! -= r[i * p + j]! * drift[j]!
    drift[i]! /= r[i * p + i]!
  }
  return { sample, drift }
}

/** Fills the covariances of four targets (the last repeated where fewer are left) with `count` samples, interleaved. */
function fillFour(problem: Problem, order: Int32Array, from: number, to: number, xs: Float64Array, ys: Float64Array, count: number, c: Float64Array): void {
  const { covariance, support, targets } = problem
  for (let r = 0; r < 4; r++) {
    const t = order[Math.min(from + r, to - 1)]!
    fillToSupport(covariance, support, c, r, 4, xs, ys, 0, count, targets.xs[t]!, targets.ys[t]!)
  }
}

function byFactor(problem: Problem, system: KrigingSystem, dual: Dual, means: Float64Array, variances: Float64Array): void {
  const { samples, targets, drift, mean, own } = problem
  const { n, p, l, q } = system
  const order = Int32Array.from({ length: targets.count }, (_, i) => i)
  const c = new Float64Array(4 * n)
  const f = new Float64Array(p)
  const g = new Float64Array(p)
  for (let from = 0; from < targets.count; from += 4) {
    fillFour(problem, order, from, targets.count, samples.xs, samples.ys, n, c)
    for (let r = 0; r < 4 && from + r < targets.count; r++) means[from + r] = mean + strided(dual.sample, c, r, n)
    solveForward4(l, n, n, c)
    for (let r = 0; r < 4 && from + r < targets.count; r++) {
      const t = from + r
      let square = 0
      for (let o = r; o < 4 * n; o += 4) square += c[o]! * c[o]!
      drift.at(t, targets.xs[t]!, targets.ys[t]!, f)
      means[t]! += dot(dual.drift, f, p)
      for (let j = 0; j < p; j++) g[j] = strided(q[j]!, c, r, n)
      variances[t] = Math.max(0, own - square + driftVariance(system, f, g, false))
    }
  }
}

/** sum of a[k] c[4 k + r] */
function strided(a: Float64Array, c: Float64Array, r: number, n: number): number {
  let sum = 0
  for (let k = 0, o = r; k < n; k++, o += 4) sum += a[k]! * c[o]!
  return sum
}

/** |R^-T f - known|^2, or |R^-T (f - known)|^2 when `before`: what not knowing the drift adds to the variance. */
function driftVariance({ p, r }: KrigingSystem, f: Float64Array, known: Float64Array, before: boolean): number {
  let sum = 0
  for (let j = 0; j < p; j++) {
    if (before) f[j]! -= known[j]!
    for (let i = 0; i < j; i++) f[j]! -= r[i * p + j]! * f[i]!
    f[j]! /= r[j * p + j]!
    const left = before ? f[j]! : f[j]! - known[j]!
    sum += left * left
  }
  return sum
}

/** K^-1 (lower triangle), or undefined when the condition number in the 1-norm is beyond WELL_CONDITIONED. */
function wellConditionedInverse({ samples, covariance }: Problem, system: KrigingSystem): Float64Array | undefined {
  const { n, l } = system
  const m = invertLower(l, n)
  const inverse = new Float64Array(n * n)
  for (let k = 0; k < n; k++) {
    for (let i = 0; i <= k; i++) {
      const factor = m[k * n + i]!
      for (let j = 0; j <= i; j++) inverse[i * n + j]! += factor * m[k * n + j]!
    }
  }
  const column = new Float64Array(n)
  let [norm, inverseNorm] = [0, 0]
  const sums = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    covariance.fill(column, 0, 1, samples.xs, samples.ys, 0, n, samples.xs[i]!, samples.ys[i]!)
    norm = Math.max(norm, samples.errors[i]! + column.reduce((sum, value) => sum + Math.abs(value), 0))
    for (let j = 0; j <= i; j++) {
      const size = Math.abs(inverse[i * n + j]!)
      sums[i]! += size
      if (j < i) sums[j]! += size
    }
  }
  for (const sum of sums) inverseNorm = Math.max(inverseNorm, sum)
  return norm * inverseNorm <= WELL_CONDITIONED ? inverse : undefined
}

function withinReach(problem: Problem, system: KrigingSystem, dual: Dual, inverse: Float64Array, means: Float64Array, variances: Float64Array): void {
  const { samples, targets, drift, mean, own, covariance, support } = problem
  const { n, p } = system
  const half = support.dxs.reduce((most, dx, j) => Math.max(most, Math.hypot(dx, support.dys[j]!)), 0)
  const grid = NeighbourGrid.of(samples.xs, samples.ys)
  const tiles = tilesOf(targets.xs, targets.ys, Math.max(TILE * covariance.reach, half))
  // K^-1 F = L^-T Q R, for the drift's part.
  const columns = driftColumns(system)
  const near = { xs: new Float64Array(n), ys: new Float64Array(n), sample: new Float64Array(n), columns: columns.map(() => new Float64Array(n)) }
  const matrix = new Float64Array(n * n)
  const c = new Float64Array(4 * n)
  const quadratic = new Float64Array(4)
  const f = new Float64Array(p)
  const known = new Float64Array(p)
  for (let tile = 0; tile + 1 < tiles.starts.length; tile++) {
    const [start, end] = [tiles.starts[tile]!, tiles.starts[tile + 1]!]
    const middle = middleOf(targets.xs, targets.ys, tiles.order, start, end)
    const u = grid.within(middle.x, middle.y, (covariance.reach + middle.radius + half) * (1 + 1e-9))
    const chosen = grid.found.subarray(0, u).sort()
    for (let i = 0; i < u; i++) {
      const sample = chosen[i]!
      near.xs[i] = samples.xs[sample]!
      near.ys[i] = samples.ys[sample]!
      near.sample[i] = dual.sample[sample]!
      columns.forEach((column, j) => { near.columns[j]![i] = column[sample]! })
      for (let k = 0; k <= i; k++) matrix[i * u + k] = inverse[sample * n + chosen[k]!]!
    }
    for (let from = start; from < end; from += 4) {
      fillFour(problem, tiles.order, from, end, near.xs, near.ys, u, c)
      quadraticForm4(matrix, u, u, c, quadratic)
      for (let r = 0; r < 4 && from + r < end; r++) {
        const t = tiles.order[from + r]!
        drift.at(t, targets.xs[t]!, targets.ys[t]!, f)
        means[t] = mean + strided(near.sample, c, r, u) + dot(dual.drift, f, p)
        for (let j = 0; j < p; j++) known[j] = strided(near.columns[j]!, c, r, u)
        variances[t] = Math.max(0, own - quadratic[r]! + driftVariance(system, f, known, true))
      }
    }
  }
}

function driftColumns({ n, p, q, r, l }: KrigingSystem): Float64Array[] {
  return Array.from({ length: p }, (_, j) => {
    const column = new Float64Array(n)
    for (let i = 0; i <= j; i++) for (let k = 0; k < n; k++) column[k]! += q[i]![k]! * r[i * p + j]!
    solveBackward(l, n, n, column)
    return column
  })
}
