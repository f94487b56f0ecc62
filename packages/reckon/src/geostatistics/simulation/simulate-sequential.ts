import { POINT } from '../support.ts'
import { driftOf } from '../drift.ts'
import { meansOfAll } from '../kriging/means-of-all.ts'
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
  const from = new Int32Array(weights.weights.length + 3)
  const factors = new Float64Array(weights.weights.length + 3)
  for (const place of path) {
    const k = weights.find(place)
    const at = place * realisations
    // At a sample the error is zero in every realisation: only places count.
    let count = 0
    for (let i = 0; i < k; i++) {
      const other = weights.found[i]! - known
      if (other < 0) continue
      from[count] = other * realisations
      factors[count++] = weights.weights[i]!
    }
    // Padded to whole fours with a factor of zero.
    for (; count % 4 !== 0; count++) {
      from[count] = at
      factors[count] = 0
    }
    for (let i = 0; i < count; i += 4) addFour(errors, at, from, factors, i, realisations)
    for (let r = 0; r < realisations; r++) errors[at + r]! += weights.spread * streams[r]!.normal()
    weights.add(place)
  }
  return errors
}

/** values[to + r] += the sum over four neighbours of factor * values[from + r]: four at a time, to write each value a quarter as often. */
function addFour(values: Float64Array, to: number, from: Int32Array, factors: Float64Array, i: number, count: number): void {
  const f0 = factors[i]!
  const f1 = factors[i + 1]!
  const f2 = factors[i + 2]!
  const f3 = factors[i + 3]!
  const a = from[i]!
  const b = from[i + 1]!
  const c = from[i + 2]!
  const d = from[i + 3]!
  for (let r = 0; r < count; r++) values[to + r]! += f0 * values[a + r]! + f1 * values[b + r]! + f2 * values[c + r]! + f3 * values[d + r]!
}
