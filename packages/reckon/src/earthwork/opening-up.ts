import { InputError } from '../core/index.ts'
import type { WayStation } from './way-in.ts'
import { checkWay } from './way-in.ts'

/** What is cut at the portal: the brow (its back raised), the sill (lowered), or the ribs (both drawn back, half each). */
export type Cut = 'brow' | 'sill' | 'ribs'

export interface OpenedUp {
  /** In place, volume. */
  readonly bank: number
  /** How far in the cut runs before it meets what is there. */
  readonly runs: number
  /** The way with the cut made, with a place added wherever the cut begins, ends or the old line bends. */
  readonly way: readonly WayStation[]
}

/**
 * The way in when the brow, the sill or the ribs at the portal are cut by `depth`, tapering inward until the cut meets what is there.
 *
 * From the portal the raised back falls inward, the lowered sill rises inward, and the ribs draw together, each at `taper` (rise over run; for the sill
 * the fall that still drains it). Only ground inside the portal is counted: the slope above a raised brow is its own job.
 * @param stations  as for wayIn
 * @param depth  zero or more; for the ribs the whole gain in width
 * @param taper  above zero
 * @throws InputError as wayIn, for a depth below zero or a taper that is not above zero
 */
export function openUp(stations: readonly WayStation[], cut: Cut, depth: number, taper: number): OpenedUp {
  checkWay(stations)
  if (!(depth >= 0 && Number.isFinite(depth))) throw new InputError('depth', depth, 'zero or more')
  if (!(taper > 0 && Number.isFinite(taper))) throw new InputError('taper', taper, 'a slope above zero')
  if (depth === 0) return { bank: 0, runs: 0, way: stations }
  const portal = stations[0]!
  const wanted = (s: WayStation): number => {
    const left = s.at - portal.at
    return cut === 'brow' ? portal.back + depth - taper * left - s.back : cut === 'sill' ? s.sill - (portal.sill - depth + taper * left) : portal.width + depth - taper * left - s.width
  }
  const cutThere = (s: WayStation): WayStation => {
    const more = Math.max(0, wanted(s))
    return cut === 'brow' ? { ...s, back: s.back + more } : cut === 'sill' ? { ...s, sill: s.sill - more } : { ...s, width: s.width + more }
  }
  // The cut ends for good where it first meets what is there; low places further in are left.
  const way: WayStation[] = []
  let bank = 0, runs = stations.at(-1)!.at - portal.at, ended = false
  for (const [i, s] of stations.entries()) {
    const before = stations[i - 1]
    if (ended || before === undefined) { way.push(ended ? s : cutThere(s)); continue }
    const [a, b] = [wanted(before), wanted(s)]
    if (b > 0) { bank += volume(before, s, cut, a, b); way.push(cutThere(s)); continue }
    const t = a / (a - b), end = between(before, s, t)
    bank += volume(before, end, cut, a, 0)
    runs = end.at - portal.at
    ended = true
    if (t < 1) way.push(end)
    way.push(s)
  }
  return { bank, runs, way }
}

/** Between two places the cut and what it is multiplied with both run straight, so that Simpson's rule is exact. */
function volume(from: WayStation, to: WayStation, cut: Cut, a: number, b: number): number {
  const other = (s: WayStation) => cut === 'ribs' ? s.back - s.sill : s.width
  const [p, q] = [other(from), other(to)]
  return (to.at - from.at) * (a * p + (a + b) * (p + q) + b * q) / 6
}

const between = (a: WayStation, b: WayStation, t: number): WayStation => ({
  at: a.at + t * (b.at - a.at), sill: a.sill + t * (b.sill - a.sill), back: a.back + t * (b.back - a.back), width: a.width + t * (b.width - a.width),
})
