import { DegenerateError } from '../core/index.ts'
import type { Enu } from '../core/index.ts'
import { attitudeOf, checkedAttitude, normalOf } from './attitude.ts'
import type { Attitude } from './attitude.ts'
import { checkedLine, lineOf, vectorOf } from './line.ts'
import type { Line } from './line.ts'
import { scatterOf } from './spread.ts'
import { symmetricEigen } from './symmetric-eigen.ts'
import { scaled } from './vector.ts'

export interface OrientationTensor {
  /** Largest first, sum 1. Near (1, 0, 0) a cluster, near (1/2, 1/2, 0) a girdle, near (1/3, 1/3, 1/3) no order. */
  readonly eigenvalues: Enu
  /** The axes in the same order. The first is the middle of a cluster; the last is square to a girdle. */
  readonly axes: readonly [Line, Line, Line]
  /** Woodcock: K = ln(S1/S2)/ln(S2/S3) above 1 for clusters, below 1 for girdles; C = ln(S1/S3) the strength. Undefined when an eigenvalue is 0. */
  readonly woodcock: { readonly K: number, readonly C: number } | undefined
  /** Vollmer: shares of point, girdle and random fabric; they sum to 1. */
  readonly vollmer: { readonly point: number, readonly girdle: number, readonly random: number }
}

/**
 * Eigen-analysis of the orientation of lines without a sense (poles to joints, lineations).
 * @param directions one or more
 * @throws DegenerateError("too few"); InputError
 * Source: Woodcock, GSA Bulletin 88, 1977, 1231; Vollmer, GSA Bulletin 102, 1990, 786 (from memory; checked against set B2 of Fisher, Lewis and Embleton).
 */
export function orientationTensor(directions: readonly Line[]): OrientationTensor {
  if (directions.length === 0) throw new DegenerateError('too few', 'directions', 0, 'one or more directions')
  const { values, vectors } = tensorOf(directions.map((line, i) => vectorOf(checkedLine(line, `directions[${i}]`))))
  const [s1, s2, s3] = values
  const axes = vectors.map(lineOf) as [Line, Line, Line]
  const some = s3 > directions.length * Number.EPSILON
  return {
    eigenvalues: values, axes,
    woodcock: some && s2 > s3 ? { K: Math.log(s1 / s2) / Math.log(s2 / s3), C: Math.log(s1 / s3) } : undefined,
    vollmer: { point: s1 - s2, girdle: 2 * (s2 - s3), random: 3 * s3 },
  }
}

/**
 * The average attitude of planes, by the main axis of their poles: safe across north and for dips either side of upright.
 * @throws DegenerateError("too few" | "no mean direction"); InputError
 */
export function meanPlane(readings: readonly Attitude[]): Attitude {
  if (readings.length === 0) throw new DegenerateError('too few', 'readings', 0, 'one or more readings')
  const { values, vectors } = tensorOf(readings.map((r, i) => normalOf(checkedAttitude(r, `readings[${i}]`))))
  if (values[0] - values[1] <= readings.length * 8 * Number.EPSILON) throw new DegenerateError('no mean direction', 'readings', readings.length, 'readings that agree on one plane')
  return attitudeOf(vectors[0])
}

function tensorOf(vectors: readonly Enu[]) {
  const { values, vectors: axes } = symmetricEigen(scatterOf(vectors.map(v => scaled(v, 1 / Math.sqrt(vectors.length)))))
  const [a, b, c] = [values[0], Math.max(0, values[1]), Math.max(0, values[2])]
  const sum = a + b + c
  return { values: [a / sum, b / sum, c / sum] as Enu, vectors: axes }
}
