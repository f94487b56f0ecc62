import type { Degrees, Matrix3 } from '../core/index.ts'
import { axesOf } from './attitude.ts'
import type { Attitude } from './attitude.ts'
import { along, outer, plus, zeroMatrix } from './vector.ts'

/** How well an attitude is known. */
export interface OrientationDoubt {
  /** Covariance of the unit normal, per unit vector squared (radians squared); nothing along the normal itself. */
  readonly normal: Matrix3
  /** One standard deviation of the strike, degrees; at most 180, which says that the strike is not determined. */
  readonly strike: Degrees
  /** One standard deviation of the dip, degrees. */
  readonly dip: Degrees
  /** Root mean square angle between the true normal and the fitted one, degrees. */
  readonly pole: Degrees
}

const toDegrees = (variance: number): number => Math.sqrt(Math.max(variance, 0)) * 180 / Math.PI

/** Strike and dip doubt from the covariance of the normal. A level plane has no strike, so its doubt goes to 180. */
export function orientationDoubt(attitude: Attitude, normal: Matrix3): OrientationDoubt {
  const axes = axesOf(attitude)
  const level = Math.sin(attitude.dip * Math.PI / 180)
  const sideways = toDegrees(along(normal, axes.strike))
  return {
    normal,
    strike: sideways === 0 ? 0 : Math.min(180, sideways / level),
    dip: Math.min(180, toDegrees(along(normal, axes.dip))),
    pole: Math.min(180, toDegrees(normal[0][0] + normal[1][1] + normal[2][2])),
  }
}

/** Covariance of the normal from standard deviations of strike and dip read independently, degrees. */
export function normalCovariance(attitude: Attitude, sigma: { readonly strike: Degrees, readonly dip: Degrees }): Matrix3 {
  const axes = axesOf(attitude)
  const level = Math.sin(attitude.dip * Math.PI / 180)
  const [s, d] = [sigma.strike * Math.PI / 180 * level, sigma.dip * Math.PI / 180]
  return plus(plus(zeroMatrix, outer(axes.strike), s * s), outer(axes.dip), d * d)
}
