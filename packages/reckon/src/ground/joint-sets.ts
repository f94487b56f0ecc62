import type { Degrees, Enu } from '../core/index.ts'
import { angleBetween, attitudeOf, normalOf } from '../structure/attitude.ts'
import type { Attitude } from '../structure/attitude.ts'
import { add, dot, scaled } from '../structure/vector.ts'

export interface JointSet extends Attitude {
  /** Indices of its readings. */
  readonly of: readonly number[]
}

/**
 * Puts planes that lie within so many degrees of each other together, the most crowded first, and gives the mean plane of each set. A plane by
 * itself is a set of one: it was measured, and it may be the one that lets go.
 * @param within  degrees from the set's middle plane; 20 when left out (common practice, no source)
 */
export function jointSets(planes: readonly Attitude[], within: Degrees = 20): readonly JointSet[] {
  const left = new Set(planes.keys()), sets: JointSet[] = []
  while (left.size > 0) {
    const near = (i: number) => [...left].filter(j => angleBetween(planes[i]!, planes[j]!) <= within)
    const crowd = [...left].map(near).reduce((a, b) => b.length > a.length ? b : a)
    sets.push({ ...meanPlane(crowd.map(i => planes[i]!)), of: crowd })
    crowd.forEach(i => left.delete(i))
  }
  return sets
}

/** Mean of planes that lie near each other: normals turned to one side and added. */
function meanPlane(planes: readonly Attitude[]): Attitude {
  const first = normalOf(planes[0]!)
  return attitudeOf(planes.map(normalOf).reduce<Enu>((sum, v) => add(sum, scaled(v, dot(v, first) < 0 ? -1 : 1)), [0, 0, 0]))
}
