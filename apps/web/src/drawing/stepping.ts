import type { Point } from './view.ts'

const ways: Readonly<Record<string, Point>> = { ArrowRight: { x: 1, y: 0 }, ArrowLeft: { x: -1, y: 0 }, ArrowUp: { x: 0, y: -1 }, ArrowDown: { x: 0, y: 1 } }
/** The direction on the screen that a key stands for. */
export const wayOf = (key: string): Point | undefined => ways[key]

/**
 * The next thing in a direction: the one that is nearest when going sideways counts double. Things behind are not looked at.
 * @param way  a unit vector on the screen
 */
export function nextThing<T>(things: readonly T[], at: (thing: T) => Point, from: Point, way: Point): T | undefined {
  let best: T | undefined, least = Infinity
  for (const thing of things) {
    const p = at(thing), dx = p.x - from.x, dy = p.y - from.y
    const ahead = dx * way.x + dy * way.y, aside = Math.abs(dx * way.y - dy * way.x)
    if (ahead <= 0 || aside > 2 * ahead) continue
    const far = ahead + 2 * aside
    if (far < least) { least = far; best = thing }
  }
  return best
}
