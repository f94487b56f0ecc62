import type { Enu } from '../core/index.ts'
import { checkedAttitude, normalOf } from './attitude.ts'
import type { Attitude } from './attitude.ts'
import { checkedPoint } from './spread.ts'
import { dot, subtract } from './vector.ts'

/**
 * Thickness of a layer between two points on its walls, square to its plane: |(to - from) . n|.
 * @returns in the unit of the points
 * @throws InputError
 */
export function trueThickness(plane: Attitude, from: Enu, to: Enu): number {
  const normal = normalOf(checkedAttitude(plane, 'plane'))
  checkedPoint(from, 'from')
  checkedPoint(to, 'to')
  return Math.abs(dot(subtract(to, from), normal))
}
