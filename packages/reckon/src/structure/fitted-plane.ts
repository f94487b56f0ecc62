import type { Degrees, Enu } from '../core/index.ts'
import { along, subtract } from './vector.ts'
import type { OrientationDoubt } from './orientation-doubt.ts'

/** A plane through points, with what the points say about it. Lengths are in the unit of the points. */
export interface FittedPlane {
  readonly strike: Degrees
  readonly dip: Degrees
  readonly dipDirection: Degrees
  /** Upward unit normal. */
  readonly normal: Enu
  /** A point of the plane: the (weighted) middle of the points, where the plane's distance is known best. */
  readonly centroid: Enu
  /** Root mean square distance of the points from the plane. */
  readonly rms: number
  /** Distance of each point from the plane along the upward normal. */
  readonly residuals: readonly number[]
  /** Observations beyond those that just determine the plane. */
  readonly freedom: number
  /** Misfit over what the stated errors would give; 1 is as expected. Undefined without stated errors or anything to spare. */
  readonly varianceFactor: number | undefined
  /** Undefined when three points just fit a plane and no error of theirs is stated: nothing then says how good it is. */
  readonly doubt: OrientationDoubt | undefined
  /** One standard deviation of the plane's position along its normal at the centroid. Undefined with `doubt`. */
  readonly offsetSigma: number | undefined
}

/**
 * One standard deviation of the plane's position along its normal, near a point: it grows away from the middle of the data.
 * @returns in the unit of the points; undefined when the fit has no doubt to give
 */
export function planeSigmaAt(plane: Pick<FittedPlane, 'centroid' | 'doubt' | 'offsetSigma'>, point: Enu): number | undefined {
  if (plane.doubt === undefined || plane.offsetSigma === undefined) return undefined
  return Math.sqrt(plane.offsetSigma ** 2 + Math.max(0, along(plane.doubt.normal, subtract(point, plane.centroid))))
}
