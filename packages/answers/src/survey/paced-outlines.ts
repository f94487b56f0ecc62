import type { Entry } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import { entryTitle } from '../entry-title.ts'
import { textOf, valueOf } from '../read.ts'
import type { PacedOutline } from '../shapes.ts'
import type { Survey } from './survey.ts'

/** An opening of which nobody has said how wide or high it is. */
const usual = { width: 1.4, height: 1.8, eye: 1 }

/** Stepped legs as outlines: their two ends, half the width to either hand. For drawing dashed, and only where no survey is. */
export function pacedOutlines(survey: Survey): readonly PacedOutline[] {
  return survey.paced.flatMap((leg: Entry): PacedOutline[] => {
    const a = survey.stations.get(textOf(leg, 'from')!)?.point, b = survey.stations.get(textOf(leg, 'to')!)?.point
    if (!a || !b) return []
    const e = b[0] - a[0], n = b[1] - a[1], level = Math.hypot(e, n)
    const half = (valueOf(leg, 'width') ?? usual.width) / 2, high = valueOf(leg, 'height') ?? usual.height
    const right: Enu = level > 0 ? [half * n / level, -half * e / level, 0] : [half, 0, 0]
    const shifted = (p: Enu, by: Enu, times = 1): Enu => [p[0] + times * by[0], p[1] + times * by[1], p[2] + times * by[2]]
    const ends: readonly Enu[] = [a, b]
    return [{
      entry: leg.id, name: textOf(leg, 'heading') ?? entryTitle(leg),
      left: ends.map(p => shifted(p, right, -1)), right: ends.map(p => shifted(p, right)),
      back: ends.map(p => shifted(p, [0, 0, high - usual.eye])), sill: ends.map(p => shifted(p, [0, 0, -usual.eye])),
    }]
  })
}
