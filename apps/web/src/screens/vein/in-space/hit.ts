import type { Enu } from '@lodebook/reckon'
import type { Point } from '../../../drawing/view.ts'
import type { MarkSet } from './scene.ts'

export interface Hit { readonly id: string, readonly says: string, readonly at: Enu, readonly far: number }

/** The marks within a finger's reach, nearest first; every mark is looked at, which for tens of thousands is a matter of a millisecond. */
export function hits(marks: readonly MarkSet[], project: (p: Enu) => Point, finger: Point, reach: number): readonly Hit[] {
  const found: Hit[] = []
  for (const set of marks) {
    set.at.forEach((at, i) => {
      const p = project(at), far = Math.hypot(p.x - finger.x, p.y - finger.y)
      if (far <= reach) found.push({ id: set.ids[i]!, says: set.says[i]!, at, far })
    })
  }
  return found.sort((a, b) => a.far - b.far)
}
