import type { Enu, Matrix3 } from '../../core/index.ts'
import { dot, subtract } from '../vector.ts'
import { checkedPlane } from './doubtful-plane.ts'
import type { DoubtfulPlane } from './doubtful-plane.ts'

/** One way to read how far a marker is set off, and how it lies. */
export interface MarkerLook {
  /** Square to the marker, unit length, and the covariance of that. */
  readonly normal: Enu
  readonly covariance?: Matrix3
  /** From the near part to the far part along the normal. */
  readonly offset: number
  /** One standard deviation of it were the normal known; with `freedom` the scale of a t distribution. */
  readonly sigma: number
  readonly freedom?: number
  /** Turning the normal by a small vector d changes the offset by d · arm: for two places, the step from the near one to the far one. */
  readonly arm: Enu
  /** How likely this way of reading is among all; they sum to 1. */
  readonly chance: number
}

/** A plane other than the fault that was there before it moved, measured on both sides of it: a dyke, a contact, another vein. */
export interface MarkerOffset {
  /** Usually one; more when it is not sure which wall of a dyke was seen. */
  readonly looks: readonly MarkerLook[]
  /** It is the lost vein itself, found again: its normal and near part are then the vein's, and `sigma` is the doubt of the far part alone. */
  readonly isVein?: boolean
}

/**
 * The offset of a marker whose two parts are known as one plane each, taken as parallel.
 * @param near  the part on this side: its normal serves for both
 * @param far   only its point and the doubt of its position are used
 * @throws InputError
 */
export function markerBetween(near: DoubtfulPlane, far: DoubtfulPlane): MarkerOffset {
  const [a, b] = [checkedPlane(near, 'near'), checkedPlane(far, 'far')]
  const arm = subtract(b.point, a.point)
  return {
    looks: [{
      normal: a.normal, ...(a.covariance ? { covariance: a.covariance } : {}),
      offset: dot(a.normal, arm), sigma: Math.hypot(a.sigma ?? 0, b.sigma ?? 0), arm, chance: 1,
    }],
  }
}
