import type { Degrees, Enu } from '../../core/index.ts'
import { directionOf, vectorOf } from '../line.ts'
import { checkedPoint } from '../spread.ts'
import { add, dot, scaled, subtract } from '../vector.ts'
import { checkedUnit } from './doubtful-plane.ts'
import type { LostPartDraw, LostPartFamily } from './lost-part-family.ts'

/** A heading to be driven straight. Inclination up positive. */
export interface Heading { readonly from: Enu, readonly bearing: Degrees, readonly inclination: Degrees }

export interface HeadingMeets {
  /** One a draw: how far along the heading it meets the continuation; Infinity where it never does, ahead and beyond the fault. */
  readonly lengths: readonly number[]
  /** One a draw: from the near part of the vein to the continuation along the heading's direction; Infinity when that runs along the vein. */
  readonly separations: readonly number[]
  /** Where it meets; undefined where it never does. */
  readonly points: readonly (Enu | undefined)[]
}

export const headingDirection = ({ bearing, inclination }: Pick<Heading, 'bearing' | 'inclination'>): Enu => vectorOf({ trend: bearing, plunge: 0 - inclination })

/** Bearing and inclination of a direction. */
export function bearingOf(direction: Enu): Pick<Heading, 'bearing' | 'inclination'> {
  const { trend, plunge } = directionOf(direction)
  return { bearing: trend, inclination: 0 - plunge }
}

/** How far along a direction one draw's continuation is met; Infinity when it is not, ahead and beyond the fault. */
export function lengthTo(draw: LostPartDraw, far: number, from: Enu, direction: Enu): number {
  const across = dot(draw.normal, direction)
  const length = dot(draw.normal, subtract(draw.point, from)) / across
  if (!(length >= 0 && Number.isFinite(length))) return Infinity
  const beyond = dot(draw.fault.normal, subtract(from, draw.fault.point)) + length * dot(draw.fault.normal, direction)
  return far * beyond >= 0 ? length : Infinity
}

/**
 * Where a straight heading would meet the lost part of a vein, draw by draw.
 *
 * It counts as met only beyond the fault: on this side there is no continuation.
 * @throws InputError
 */
export function meetHeading({ draws, far }: LostPartFamily, heading: Heading): HeadingMeets {
  checkedPoint(heading.from, 'heading.from')
  const direction = checkedUnit(headingDirection(heading), 'heading')
  const lengths = draws.map(draw => lengthTo(draw, far, heading.from, direction))
  return {
    lengths,
    separations: draws.map((draw) => {
      const across = dot(draw.normal, direction)
      return across === 0 ? Infinity : draw.apart / across
    }),
    points: lengths.map(length => length === Infinity ? undefined : add(heading.from, scaled(direction, length))),
  }
}
