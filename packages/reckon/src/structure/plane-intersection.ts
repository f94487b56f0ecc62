import { DegenerateError, radians } from '../core/index.ts'
import type { Degrees, Enu } from '../core/index.ts'
import { axesOf, checkedAttitude } from './attitude.ts'
import type { Attitude } from './attitude.ts'
import { lineOf } from './line.ts'
import type { Line } from './line.ts'
import { cross, dot, length } from './vector.ts'

export interface PlaneIntersection extends Line {
  /** Angle in plane a from its strike direction (right-hand rule) to the line, [0, 180] degrees. */
  readonly rakeA: Degrees
  readonly rakeB: Degrees
}

/** Angle in a plane from its strike direction down to a line of the plane, [0, 180] degrees. A level line gives 0 or 180, by its sense. */
export function rakeOf(plane: Attitude, line: Enu): Degrees {
  const { strike, dip } = axesOf(plane)
  return Math.atan2(Math.max(0, dot(line, dip)), dot(line, strike)) * 180 / Math.PI
}

/**
 * The line in which two planes meet: the way an ore shoot often runs where a vein meets another plane.
 * @returns trend and plunge (downward end; a level line with trend in [0, 180)), and the rake in each plane
 * @throws DegenerateError("parallel"); InputError
 */
export function planeIntersection(a: Attitude, b: Attitude, fields: readonly [string, string] = ['a', 'b']): PlaneIntersection {
  const [first, second] = [checkedAttitude(a, fields[0]), checkedAttitude(b, fields[1])]
  const raw = cross(axesOf(first).normal, axesOf(second).normal)
  if (length(raw) <= 8 * Number.EPSILON) throw new DegenerateError('parallel', fields[1], b, `a plane not parallel to ${fields[0]}`)
  const line = lineOf(raw)
  const down: Enu = raw[2] > 0 ? [-raw[0], -raw[1], -raw[2]] : raw
  // A level line has two ends; the rakes must be of the end that is given as its trend.
  const otherEnd = line.plunge === 0 && down[0] * Math.sin(radians(line.trend)) + down[1] * Math.cos(radians(line.trend)) < 0
  const along: Enu = otherEnd ? [-down[0], -down[1], -down[2]] : down
  return { ...line, rakeA: rakeOf(first, along), rakeB: rakeOf(second, along) }
}
