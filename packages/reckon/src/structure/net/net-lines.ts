import { InputError } from '../../core/index.ts'
import type { Degrees, Enu } from '../../core/index.ts'
import { axesOf, checkedAttitude } from '../attitude.ts'
import type { Attitude } from '../attitude.ts'
import { checkedLine, directionOf, lineOf, vectorOf } from '../line.ts'
import type { Line } from '../line.ts'
import { add, cross, scaled, unit } from '../vector.ts'
import { equalArea } from './equal-area.ts'
import type { NetPoint } from './equal-area.ts'

/** The pole of a plane: the line square to it, its lower end. */
export const poleOf = (plane: Attitude): Line => lineOf(axesOf(checkedAttitude(plane, 'plane')).normal)

const steps = 90

/** The curve in which a plane cuts the lower half of the sphere, from its strike direction round to the other end. @throws InputError */
export function greatCircle(plane: Attitude): readonly NetPoint[] {
  const { strike, dip } = axesOf(checkedAttitude(plane, 'plane'))
  return Array.from({ length: steps + 1 }, (_, i) => {
    const turn = i / steps * Math.PI
    const line = directionOf(add(scaled(strike, Math.cos(turn)), scaled(dip, Math.sin(turn))))
    return equalArea({ trend: line.trend, plunge: Math.max(0, line.plunge) })
  })
}

/**
 * The cone about a line as it cuts the net: one curve, or two where it passes the rim and comes in again on the other side.
 * @param halfAngle (0, 90) degrees
 * @throws InputError
 */
export function smallCircle(about: Line, halfAngle: Degrees): readonly (readonly NetPoint[])[] {
  if (!(halfAngle > 0 && halfAngle < 90)) throw new InputError('halfAngle', halfAngle, 'between 0 and 90 degrees')
  const axis = vectorOf(checkedLine(about, 'about'))
  const side = unit(cross(axis, Math.abs(axis[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]))
  const other = cross(axis, side)
  const [c, s] = [Math.cos(halfAngle * Math.PI / 180), Math.sin(halfAngle * Math.PI / 180)]
  const points = Array.from({ length: 2 * steps + 1 }, (_, i): Enu => {
    const turn = i / steps * Math.PI
    return add(scaled(axis, c), add(scaled(side, s * Math.cos(turn)), scaled(other, s * Math.sin(turn))))
  })
  const pieces: NetPoint[][] = []
  points.forEach((p, i) => {
    if (i === 0 || (p[2] > 0) !== (points[i - 1]![2] > 0)) pieces.push([])
    pieces.at(-1)!.push(equalArea(directionOf(p)))
  })
  return pieces
}
