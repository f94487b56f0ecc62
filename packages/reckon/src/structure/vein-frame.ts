import type { Enu, VeinPoint } from '../core/index.ts'
import { axesOf, checkedAttitude } from './attitude.ts'
import type { Attitude } from './attitude.ts'
import { checkedPoint } from './spread.ts'
import { add, dot, scaled, subtract } from './vector.ts'

/** A point told by the vein: along the strike, down the dip, and off the plane towards the hanging wall (negative: footwall). */
export interface OffVein extends VeinPoint { readonly off: number }

/** A vein's own coordinates. Lengths in the unit of the origin. */
export interface VeinFrame {
  readonly origin: Enu
  readonly strike: Enu
  readonly dip: Enu
  readonly normal: Enu
  readonly toVein: (point: Enu) => OffVein
  /** The grid point of a place on the vein, `off` from its plane if given. */
  readonly toGrid: (point: VeinPoint, off?: number) => Enu
}

/**
 * The coordinates of a vein: `along` the strike (right-hand rule), `down` the dip, `off` the plane along the upward normal.
 * @param origin where along, down and off are zero
 * @throws InputError for an attitude or origin that can't be one
 */
export function veinFrame(plane: Attitude, origin: Enu): VeinFrame {
  checkedPoint(origin, 'origin')
  const { strike, dip, normal } = axesOf(checkedAttitude(plane, 'plane'))
  return {
    origin, strike, dip, normal,
    toVein: (point) => {
      const from = subtract(point, origin)
      return { along: dot(from, strike), down: dot(from, dip), off: dot(from, normal) }
    },
    toGrid: ({ along, down }, off = 0) => add(origin, add(add(scaled(strike, along), scaled(dip, down)), scaled(normal, off))),
  }
}
