import { POINT } from '../support.ts'
import { driftOf } from '../drift.ts'
import { meansOfAll } from '../kriging/krige-all.ts'
import { krigeNear } from '../kriging/krige-near.ts'
import { coarseToFinePath } from './path.ts'
import { PathWeights } from './path-weights.ts'
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
  return Array.from({ length: realisations }, (_, r) => {
    const values = means.slice()
    for (let place = 0; place < count; place++) values[place]! += errors[place * realisations + r]!
    return values
  })
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
  const known = places.samples.count
  const weights = new PathWeights(places, neighbours)
  const streams = Array.from({ length: realisations }, (_, r) => streamOf(seed, r))
  const errors = new Float64Array(places.count * realisations)
  for (const place of path) {
    const k = weights.find(place)
    const at = place * realisations
    for (let i = 0; i < k; i++) {
      // At a sample the error is zero in every realisation.
      const from = (weights.found[i]! - known) * realisations
      if (from >= 0) addTimes(errors, at, from, weights.weights[i]!, realisations)
    }
    for (let r = 0; r < realisations; r++) errors[at + r]! += weights.spread * streams[r]!.normal()
    weights.add(place)
  }
  return errors
}

function addTimes(values: Float64Array, to: number, from: number, factor: number, count: number): void {
  for (let r = 0; r < count; r++) values[to + r]! += factor * values[from + r]!
}
