import { InputError } from '../../core/index.ts'
import type { Draws, Enu, Matrix3 } from '../../core/index.ts'
import { checkedCovariance } from '../covariance.ts'
import type { FittedPlane } from '../fitted-plane.ts'
import { checkedPoint } from '../spread.ts'
import { symmetricEigen } from '../symmetric-eigen.ts'
import { add, length, outer, plus, scaled, times, unit, zeroMatrix } from '../vector.ts'

/** A plane that is known with doubt. What is not given is taken as exact. */
export interface DoubtfulPlane {
  /** Square to the plane, unit length, either sense. */
  readonly normal: Enu
  /** Where the plane's position is known best. */
  readonly point: Enu
  /** Covariance of the normal, radians squared; see OrientationDoubt. */
  readonly covariance?: Matrix3
  /** One standard deviation of the plane's position along its normal at `point`. */
  readonly sigma?: number
}

/** A fitted plane with its doubt. */
export function doubtfulPlane({ normal, centroid, doubt, offsetSigma }: Pick<FittedPlane, 'normal' | 'centroid' | 'doubt' | 'offsetSigma'>): DoubtfulPlane {
  return { normal, point: centroid, ...(doubt ? { covariance: doubt.normal } : {}), ...(offsetSigma === undefined ? {} : { sigma: offsetSigma }) }
}

/** How far from 1 the length of a unit vector may be: what rounding to six decimals does. */
const unitTolerance = 1e-6

/** Refuses a vector that is not of unit length; returns it made exactly so. */
export function checkedUnit(vector: Enu, field: string): Enu {
  checkedPoint(vector, field)
  if (Math.abs(length(vector) - 1) > unitTolerance) throw new InputError(field, vector, 'a vector of length 1')
  return unit(vector)
}

/** Refuses a plane that can't be one; returns it with a normal of exactly unit length. */
export function checkedPlane(plane: DoubtfulPlane, field: string): DoubtfulPlane {
  checkedPoint(plane.point, `${field}.point`)
  if (plane.covariance) checkedCovariance(plane.covariance, `${field}.covariance`)
  notNegative(plane.sigma ?? 0, `${field}.sigma`)
  return { ...plane, normal: checkedUnit(plane.normal, `${field}.normal`) }
}

/** Refuses a doubt below zero, or none at all. */
export function notNegative(value: number, field: string): number {
  if (!(Number.isFinite(value) && value >= 0)) throw new InputError(field, value, 'a number not below zero')
  return value
}

/** A source of normals as they may be: the given one with an error drawn from its covariance, of unit length. */
export function normalsOf({ normal, covariance }: Pick<DoubtfulPlane, 'normal' | 'covariance'>): (draws: Draws) => Enu {
  if (!covariance) return () => normal
  const { values, vectors } = symmetricEigen(covariance)
  const root = vectors.reduce((sum, v, k) => plus(sum, outer(v), Math.sqrt(Math.max(values[k]!, 0))), zeroMatrix)
  return draws => unit(add(normal, times(root, [draws.normal(), draws.normal(), draws.normal()])))
}

/** A point of the plane as it may be, for a drawn normal and a standard normal number. */
export const shiftedPoint = ({ point, sigma = 0 }: DoubtfulPlane, normal: Enu, z: number): Enu => add(point, scaled(normal, sigma * z))
