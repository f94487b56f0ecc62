import { DegenerateError } from '../core/index.ts'
import type { Degrees, Enu } from '../core/index.ts'
import { checkedLine, directionOf, vectorOf } from './line.ts'
import type { Line } from './line.ts'
import { add, length, scaled, subtract } from './vector.ts'

export interface DirectionMean extends Line {
  readonly count: number
  /** Length R of the sum of the unit vectors. */
  readonly resultant: number
  /** Concentration (N - 1)/(N - R); Infinity when all are the same. */
  readonly kappa: number
  /** Half-angle of the cone that holds the true mean with 95 % confidence, degrees; 180 when nothing is excluded. */
  readonly alpha95: Degrees
}

/**
 * Mean direction of lines that have a sense (slip arrows, drill holes), with Fisher's concentration and exact 95 % cone.
 *
 * Not for lines without a sense, such as poles to joints: use `orientationTensor` or `meanPlane`.
 * @param directions two or more
 * @throws DegenerateError("too few" | "no mean direction"); InputError
 * Source: Fisher, Proc. R. Soc. A 217, 1953, 295; checked against Fisher, Lewis and Embleton, Statistical Analysis of Spherical Data, set B2.
 */
export function directionMean(directions: readonly Line[]): DirectionMean {
  const count = directions.length
  if (count < 2) throw new DegenerateError('too few', 'directions', count, 'two or more directions')
  const vectors = directions.map((line, i) => vectorOf(checkedLine(line, `directions[${i}]`)))
  const sum = vectors.reduce<Enu>(add, [0, 0, 0])
  const resultant = length(sum)
  if (resultant <= count * 8 * Number.EPSILON) throw new DegenerateError('no mean direction', 'directions', count, 'directions that do not cancel out')
  const mean = scaled(sum, 1 / resultant)
  // N - R as half the sum of squared chords: the plain difference loses every digit when the readings agree well.
  const missing = vectors.reduce((total, v) => total + length(subtract(v, mean)) ** 2, 0) / 2
  const apart = missing <= count * Number.EPSILON ** 2 * 16 ? 0 : missing
  const cosine = 1 - apart / resultant * (20 ** (1 / (count - 1)) - 1)
  return {
    ...directionOf(mean), count, resultant,
    kappa: apart === 0 ? Infinity : (count - 1) / apart,
    alpha95: cosine <= -1 ? 180 : Math.acos(cosine) * 180 / Math.PI,
  }
}
