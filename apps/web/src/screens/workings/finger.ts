import type { Leg, Workings } from '@lodebook/answers'
import type { Enu } from '@lodebook/reckon'
import { alongLine } from '../../drawing/nearest.ts'
import type { Point } from '../../drawing/view.ts'
import { decimal } from '../../words/number.ts'

/** Where the finger is, on every view of the sheet. */
export interface Pointed {
  /** The place in the mine, when the finger is on something whose place is known. */
  readonly at: Enu | undefined
  readonly says: string
}

/** The place on the traverse under a finger, and how one would say it: 'between A6 and A7, 4.2 m from A6'. */
export function onTraverse(workings: Workings, project: (p: Enu) => Point, p: Point, reach: number): Pointed | undefined {
  let best: { leg: Leg, share: number } | undefined, least = reach
  for (const leg of workings.legs) {
    const { share, off } = alongLine(project(leg.a), project(leg.b), p)
    if (off <= least) { least = off; best = { leg, share } }
  }
  if (!best) return undefined
  const { leg: { a, b, from, to }, share } = best
  const at: Enu = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, a[2] + (b[2] - a[2]) * share]
  const far = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]) * share
  return { at, says: `Between ${from} and ${to}, ${decimal(far, 1)} m from ${from}. ${gridText(at)}` }
}

/** '1,012.3 E 998.1 N, elevation 402.6 m'. */
export const gridText = ([e, n, u]: Enu): string => `${decimal(e, 1)} E ${decimal(n, 1)} N, elevation ${decimal(u, 1)} m`
