import { DegenerateError } from '../core/index.ts'
import { attitudeOf } from './attitude.ts'
import type { Attitude } from './attitude.ts'
import { checkedLine, vectorOf } from './line.ts'
import type { Line } from './line.ts'
import { cross, length } from './vector.ts'

/**
 * Strike and true dip of the plane that holds two lines, such as apparent dips seen on two walls.
 * @throws DegenerateError("parallel") when the lines are one line; InputError
 */
export function trueDip(a: Line, b: Line): Attitude {
  const normal = cross(vectorOf(checkedLine(a, 'apparent[0]')), vectorOf(checkedLine(b, 'apparent[1]')))
  if (length(normal) <= 8 * Number.EPSILON) throw new DegenerateError('parallel', 'apparent', [a, b], 'two lines that are not one')
  return attitudeOf(normal)
}
