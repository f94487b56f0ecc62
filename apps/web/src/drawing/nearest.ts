import type { Point } from './view.ts'

/** The thing whose point is nearest, no further than `reach`; the same units throughout. */
export function nearest<T>(things: readonly T[], at: (thing: T) => Point, p: Point, reach: number): T | undefined {
  let best: T | undefined, bestDistance = reach
  for (const thing of things) {
    const q = at(thing), d = Math.hypot(q.x - p.x, q.y - p.y)
    if (d <= bestDistance) { best = thing; bestDistance = d }
  }
  return best
}

/** All things within reach, nearest first. */
export const within = <T>(things: readonly T[], at: (thing: T) => Point, p: Point, reach: number): readonly T[] =>
  things.map(thing => ({ thing, d: Math.hypot(at(thing).x - p.x, at(thing).y - p.y) }))
    .filter(({ d }) => d <= reach).sort((a, b) => a.d - b.d).map(({ thing }) => thing)

/** Where on a straight line a point falls: 0 at `from`, 1 at `to`, and how far off the line it is. */
export function alongLine(from: Point, to: Point, p: Point): { readonly share: number, readonly off: number } {
  const dx = to.x - from.x, dy = to.y - from.y, squared = dx * dx + dy * dy
  const share = squared > 0 ? Math.min(1, Math.max(0, ((p.x - from.x) * dx + (p.y - from.y) * dy) / squared)) : 0
  return { share, off: Math.hypot(from.x + share * dx - p.x, from.y + share * dy - p.y) }
}
