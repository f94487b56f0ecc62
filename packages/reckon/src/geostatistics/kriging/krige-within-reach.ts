import { solveBackward } from '../linear/cholesky.ts'
import { quadraticForm4 } from '../linear/interleaved.ts'
import { driftVariance } from './dual.ts'
import type { Dual } from './dual.ts'
import { fillFour, strided } from './four.ts'
import { dot } from './kriging-system.ts'
import type { KrigingSystem } from './kriging-system.ts'
import { NeighbourGrid } from './neighbour-grid.ts'
import type { Problem } from './options.ts'
import { middleOf, tilesOf } from './tiles.ts'

/** Tile side as a share of the reach: small, so that the samples within reach of a tile are hardly more than those of each target. */
const TILE = 1 / 8

/**
 * Kriging from all samples where covariances end at a distance: per tile of targets the samples within reach, c^T K^-1 c over those alone.
 * Writes to `means` and `variances`.
 */
export function krigeWithinReach(
  problem: Problem, system: KrigingSystem, dual: Dual, inverse: Float64Array, means: Float64Array, variances: Float64Array,
): void {
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
