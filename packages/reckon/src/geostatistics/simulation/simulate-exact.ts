import { DegenerateError } from '../../core/index.ts'
import { JITTER } from '../kriging/kriging-system.ts'
import { choleskyPlain } from '../linear/cholesky.ts'
import type { Places } from './places.ts'
import { streamOf } from './streams.ts'

/** Draws at every place from one Cholesky factor of the covariance of samples and places. */
export function simulateExact(places: Places, realisations: number, seed: number): Float64Array[] {
  const { samples, count, mean } = places
  const known = samples.count
  const n = known + count
  const l = factorJoint(places, n)
  // The samples fix the first draws; each place then has a part they determine and a part still open.
  const drawn = new Float64Array(n)
  for (let i = 0; i < known; i++) {
    let sum = samples.values[i]! - mean
    for (let k = 0; k < i; k++) sum -= l[i * n + k]! * drawn[k]!
    drawn[i] = sum / l[i * n + i]!
  }
  return Array.from({ length: realisations }, (_, r) => {
    const stream = streamOf(seed, r)
    for (let i = known; i < n; i++) drawn[i] = stream.normal()
    return Float64Array.from({ length: count }, (_, place) => {
      const row = (known + place) * n
      let sum = mean
      for (let k = 0; k <= known + place; k++) sum += l[row + k]! * drawn[k]!
      return sum
    })
  })
}

function factorJoint({ samples, covariance, count, xs, ys }: Places, n: number): Float64Array {
  const allX = new Float64Array(n)
  const allY = new Float64Array(n)
  allX.set(samples.xs)
  allX.set(xs, samples.count)
  allY.set(samples.ys)
  allY.set(ys, samples.count)
  const l = new Float64Array(n * n)
  let row = -1
  for (const raise of [1, 1 + JITTER]) {
    for (let i = 0; i < n; i++) {
      // A place may lie on a sample with an error: there the field is one, nugget and all.
      covariance.fill(l, i * n, 1, allX, allY, 0, i, allX[i]!, allY[i]!)
      l[i * n + i] = (covariance.sill + (i < samples.count ? samples.errors[i]! : 0)) * raise
    }
    row = choleskyPlain(l, n)
    if (row < 0) return l
  }
  throw new DegenerateError('singular', row < samples.count ? 'points' : 'targets', count, 'a model whose covariance matrix can be inverted; a nugget makes it so')
}
