import type { Entry, Place } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import type { StationPlace } from '../places/place-in-space.ts'
import { textOf, wordsOf } from '../read.ts'

/** The legs of the survey as ways to go: from each station to its neighbours, metres. */
export type Legs = ReadonlyMap<string, ReadonlyMap<string, number>>

export const apart = (a: Enu, b: Enu): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])

export function legsOf(shots: readonly Entry[], stations: ReadonlyMap<string, StationPlace>): Legs {
  const legs = new Map<string, Map<string, number>>()
  const join = (from: string, to: string, metres: number) => {
    const ways = legs.get(from) ?? new Map<string, number>()
    ways.set(to, metres)
    legs.set(from, ways)
  }
  for (const shot of shots) {
    const [from, to] = [textOf(shot, 'from')!, textOf(shot, 'to')!]
    const [a, b] = [stations.get(from), stations.get(to)]
    if (!a || !b) continue
    const metres = apart(a.point, b.point)
    join(from, to, metres)
    join(to, from, metres)
  }
  return legs
}

export interface Reached { readonly metres: number, readonly before: string | undefined }

/** The shortest ways from some stations to all that can be reached (Dijkstra 1959). `starts` says how far off each start already is. */
export function shortestWays(legs: Legs, starts: ReadonlyMap<string, number>): ReadonlyMap<string, Reached> {
  const done = new Map<string, Reached>(), seen = new Map<string, Reached>([...starts].map(([name, metres]) => [name, { metres, before: undefined }]))
  for (;;) {
    let next: string | undefined, least = Infinity
    for (const [name, { metres }] of seen) if (!done.has(name) && metres < least) { next = name; least = metres }
    if (next === undefined) return done
    done.set(next, seen.get(next)!)
    for (const [to, metres] of legs.get(next) ?? []) {
      if (least + metres < (seen.get(to)?.metres ?? Infinity)) seen.set(to, { metres: least + metres, before: next })
    }
  }
}

/** The station where one goes in: the first of an adit, else the first that is tied; undefined when there is none. */
export function portalOf(headings: readonly Entry[], ties: readonly Entry[], stations: ReadonlyMap<string, StationPlace>): string | undefined {
  const adit = headings.find(heading => textOf(heading, 'sort') === 'adit')
  const candidates = [...adit ? wordsOf(adit, 'stations').slice(0, 1) : [], ...ties.map(tie => textOf(tie, 'station')!)]
  return candidates.find(name => stations.has(name))
}

/** From which stations a place is reached, and how far from each, metres; empty when it hangs on no station. */
export function joins(place: Place | undefined, stations: ReadonlyMap<string, StationPlace>): ReadonlyMap<string, number> {
  if (place?.by === 'tapes') {
    return new Map([place.first, place.second].flatMap(({ station, distance }) => stations.has(station) ? [[station, distance.value ?? 0] as const] : []))
  }
  if (place?.by !== 'station') return new Map()
  const start = stations.get(place.station), along = place.along?.value ?? 0
  if (!start) return new Map()
  const towardName = place.toward ?? start.onward, toward = towardName === undefined ? undefined : stations.get(towardName)
  return new Map([[place.station, along], ...toward && along > 0 ? [[towardName!, Math.max(0, apart(start.point, toward.point) - along)] as const] : []])
}

/** Metres on foot to a place along the shots. */
export function wayTo(ways: ReadonlyMap<string, Reached>, place: Place | undefined, stations: ReadonlyMap<string, StationPlace>): number | undefined {
  const lengths = [...joins(place, stations)].flatMap(([name, metres]) => { const way = ways.get(name); return way ? [way.metres + metres] : [] })
  return lengths.length === 0 ? undefined : Math.min(...lengths)
}
