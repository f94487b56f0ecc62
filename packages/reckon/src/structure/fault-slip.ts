import { finite } from '../core/index.ts'
import type { Degrees, Enu } from '../core/index.ts'
import { axesOf, checkedAttitude } from './attitude.ts'
import type { Attitude } from './attitude.ts'
import { checkedPoint } from './spread.ts'
import { add, dot, scaled } from './vector.ts'

/** A slip told in parts: along the fault's strike (right-hand rule positive) and down its dip, in the unit of the slip. */
export interface SlipParts { readonly alongStrike: number, readonly downDip: number }

export interface SlipMeasures extends SlipParts {
  /** Length of the slip in the fault plane. */
  readonly net: number
  /** Vertical part of the dip slip. */
  readonly throw: number
  /** Level part of the dip slip, square to the fault's strike. */
  readonly heave: number
  /** Angle in the fault from the strike direction to the slip, (-180, 180] degrees, positive downward. */
  readonly rake: Degrees
}

/** The slip vector [east, north, up] from its parts on a fault. */
export function slipVector(fault: Attitude, { alongStrike, downDip }: SlipParts): Enu {
  finite(alongStrike, 'alongStrike')
  finite(downDip, 'downDip')
  const { strike, dip } = axesOf(checkedAttitude(fault, 'fault'))
  return add(scaled(strike, alongStrike), scaled(dip, downDip))
}

/** A slip vector told in the miner's measures: strike slip, dip slip, net slip, throw, heave and rake. */
export function slipMeasures(fault: Attitude, slip: Enu): SlipMeasures {
  checkedPoint(slip, 'slip')
  const { strike, dip } = axesOf(checkedAttitude(fault, 'fault'))
  const [alongStrike, downDip] = [dot(slip, strike), dot(slip, dip)]
  const tilt = fault.dip * Math.PI / 180
  return {
    alongStrike, downDip, net: Math.hypot(alongStrike, downDip),
    throw: Math.abs(downDip) * Math.sin(tilt), heave: Math.abs(downDip) * Math.cos(tilt),
    rake: Math.atan2(downDip, alongStrike) * 180 / Math.PI,
  }
}
