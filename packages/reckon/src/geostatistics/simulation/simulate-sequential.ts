import { POINT } from '../support.ts'
import { driftOf } from '../drift.ts'
import { meansOfAll } from '../kriging/krige-all.ts'
import { krigeNear } from '../kriging/krige-near.ts'
import { KrigingSystem } from '../kriging/kriging-system.ts'
import { NeighbourGrid } from '../kriging/neighbour-grid.ts'
import { coarseToFinePath } from './path.ts'
import type { Places } from './places.ts'
import { streamOf } from './streams.ts'

/** Up to this many samples the mean is kriged from all of them; beyond, from the nearest. */
const ALL_SAMPLES = 1500
const NEAREST_SAMPLES = 64

/** Draws along one path: kriging mean from the samples, plus an error field that is zero at the samples. */
export function simulateSequential(places: Places, realisations: number, seed: number, neighbours: number): Float64Array[] {
  const { count } = places
  const means = krigedMeans(places)
  const path = coarseToFinePath(places.xs, places.ys, streamOf(seed, -1))
  const errors = drawErrors(places, path, realisations, seed, neighbours)
  return Array.from({ length: realisations }, (_, r) =>
    Float64Array.from({ length: count }, (_, place) => means[place]! + errors[place * realisations + r]!))
}

/** The simple kriging mean at each place. */
function krigedMeans({ samples, covariance, mean, count, xs, ys }: Places): Float64Array {
  if (samples.count === 0) return new Float64Array(count).fill(mean)
  const problem = {
    samples, covariance, mean, drift: driftOf('simple', samples, count), support: POINT, own: covariance.sill, targets: { count, xs, ys },
    neighbours: samples.count <= ALL_SAMPLES ? samples.count : NEAREST_SAMPLES,
  }
  return problem.neighbours === samples.count ? meansOfAll(problem) : krigeNear(problem).means
}

/** The error field at each place for every realisation: [place * realisations + r]. */
function drawErrors(places: Places, path: Int32Array, realisations: number, seed: number, neighbours: number): Float64Array {
  const { samples, covariance, count } = places
  const known = samples.count
  const xs = new Float64Array(known + count)
  const ys = new Float64Array(known + count)
  xs.set(samples.xs)
  ys.set(samples.ys)
  xs.set(places.xs, known)
  ys.set(places.ys, known)
  const grid = new NeighbourGrid(xs, ys)
  for (let i = 0; i < known; i++) grid.add(i)
  const streams = Array.from({ length: realisations }, (_, r) => streamOf(seed, r))
  const errors = new Float64Array(count * realisations)
  const system = new KrigingSystem(neighbours, 0)
  const near = { xs: new Float64Array(neighbours), ys: new Float64Array(neighbours) }
  const c = new Float64Array(neighbours)
  const none = new Float64Array(0)
  for (const place of path) {
    const x = places.xs[place]!
    const y = places.ys[place]!
    const k = grid.nearest(x, y, neighbours)
    for (let i = 0; i < k; i++) {
      near.xs[i] = xs[grid.found[i]!]!
      near.ys[i] = ys[grid.found[i]!]!
    }
    system.factor(k, (l) => {
      for (let i = 0; i < k; i++) {
        const point = grid.found[i]!
        covariance.fill(l, i * k, 1, near.xs, near.ys, 0, i, near.xs[i]!, near.ys[i]!)
        l[i * k + i] = covariance.sill + (point < known ? samples.errors[point]! : 0)
      }
    }, 'targets')
    covariance.fill(c, 0, 1, near.xs, near.ys, 0, k, x, y)
    system.reduce(c, none)
    const spread = Math.sqrt(system.variance(c, none, covariance.sill))
    system.weights(c, none)
    const at = place * realisations
    for (let i = 0; i < k; i++) {
      // At a sample the error is zero in every realisation.
      const from = (grid.found[i]! - known) * realisations
      if (from < 0) continue
      for (let r = 0; r < realisations; r++) errors[at + r]! += c[i]! * errors[from + r]!
    }
    streams.forEach((stream, r) => { errors[at + r]! += spread * stream.normal() })
    grid.add(known + place)
  }
  return errors
}
