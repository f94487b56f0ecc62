import type { Place } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import { isLocated, locate } from '../places/place-in-space.ts'
import type { PlaceContext } from '../places/place-in-space.ts'
import type { Piece } from './pieces.ts'
import { pieceOf } from './pieces.ts'
import { apart, joins, shortestWays } from './ways.ts'
import type { Legs } from './ways.ts'

/** A stretch of an opening: the line down its middle, the pieces of legs that it covers, and lines along the sides that were named. Metres. */
export interface Stretch {
  readonly length: number
  readonly line: readonly Enu[]
  readonly pieces: readonly Piece[]
  readonly along: (side: string) => readonly Enu[]
}

type AtStation = Extract<Place, { by: 'station' }>

/** A place without its side and height: where one stands. */
const standing = (place: Place): Place => {
  if (place.by !== 'station') return place
  const { by, station, toward, along } = place
  return { by, station, ...toward === undefined ? {} : { toward }, ...along === undefined ? {} : { along } }
}

/**
 * The way along the shots from one place to another, with a line along each side at the offsets taped there.
 * @returns undefined when either end has no place at a station or no shots join them
 */
export function stretchBetween(from: Place | undefined, to: Place | undefined, legs: Legs, context: PlaceContext): Stretch | undefined {
  if (from?.by !== 'station' || to?.by !== 'station') return undefined
  const [a, b] = [locate(standing(from), context), locate(standing(to), context)]
  const names = isLocated(a) && isLocated(b) ? stationsBetween(from, to, legs, context) : undefined
  if (!isLocated(a) || !isLocated(b) || !names) return undefined
  const line = [a.point, ...names.map(name => context.stations.get(name)!.point), b.point]
  const tidy = line.filter((p, i) => i === 0 || apart(p, line[i - 1]!) > 1e-6 * (1 + apart(line[0]!, line.at(-1)!)))
  return {
    length: tidy.slice(1).reduce((sum, p, i) => sum + apart(p, tidy[i]!), 0), line: tidy,
    pieces: piecesOf(from, to, names, legs, context), along: side => offset(tidy, side, context),
  }
}

const towardOf = (place: AtStation, context: PlaceContext): string | undefined => place.toward ?? context.stations.get(place.station)?.onward
const reachOf = (place: AtStation): number => place.along?.value ?? 0

/** The stations one passes from the one place to the other; none when both lie on one leg; undefined when nothing joins them. */
function stationsBetween(from: AtStation, to: AtStation, legs: Legs, context: PlaceContext): readonly string[] | undefined {
  const ends = (place: AtStation) => new Set([place.station, ...reachOf(place) > 0 ? [towardOf(place, context)] : []])
  const both = new Set([...ends(from), ...ends(to)])
  if (both.size <= 2 && (reachOf(from) > 0 || reachOf(to) > 0)) return []
  const [starts, goals] = [joins(from, context.stations), joins(to, context.stations)], ways = shortestWays(legs, starts)
  const reached = [...goals].flatMap(([name, metres]) => { const way = ways.get(name); return way ? [{ name, metres: way.metres + metres }] : [] })
  const best = reached.sort((x, y) => x.metres - y.metres)[0]
  if (!best) return undefined
  const names: string[] = []
  for (let at: string | undefined = best.name; at !== undefined; at = ways.get(at)?.before) names.unshift(at)
  return names
}

/** What is covered, leg by leg. */
function piecesOf(from: AtStation, to: AtStation, names: readonly string[], legs: Legs, context: PlaceContext): readonly Piece[] {
  const piece = (a: string, b: string | undefined, low: number, high: number) => {
    const metres = b === undefined ? undefined : legs.get(a)?.get(b)
    return b === undefined || metres === undefined || low === high ? [] : [pieceOf(a, b, metres, low, high)]
  }
  const end = (place: AtStation, station: string) => {
    const toward = towardOf(place, context), metres = toward === undefined ? undefined : legs.get(place.station)?.get(toward)
    return piece(place.station, toward, reachOf(place), station === place.station ? 0 : metres ?? 0)
  }
  if (names.length === 0) {
    const [a, b] = reachOf(from) > 0 ? [from, to] : [to, from], toward = towardOf(a, context), metres = legs.get(a.station)?.get(toward ?? '') ?? 0
    return piece(a.station, toward, reachOf(a), b.station === a.station ? reachOf(b) : metres - reachOf(b))
  }
  const whole = names.slice(1).flatMap((name, i) => piece(names[i]!, name, 0, legs.get(names[i]!)?.get(name) ?? 0))
  return [...end(from, names[0]!), ...whole, ...end(to, names.at(-1)!)]
}

/** The line moved out to a side by the offsets of the station nearest to each of its points. */
function offset(line: readonly Enu[], side: string, context: PlaceContext): readonly Enu[] {
  const stations = [...context.stations.values()]
  return line.map((p, i): Enu => {
    const [before, after] = [line[Math.max(0, i - 1)]!, line[Math.min(line.length - 1, i + 1)]!]
    const azimuth = Math.atan2(after[0] - before[0], after[1] - before[1])
    const near = [...stations].sort((s, t) => apart(s.point, p) - apart(t.point, p))[0]
    const walls = near?.walls(azimuth * 180 / Math.PI) ?? { left: 0, right: 0, up: 0, down: 0 }
    const out = side === 'left rib' ? -walls.left : side === 'right rib' ? walls.right : 0
    const up = side === 'back' ? walls.up : side === 'sill' ? -walls.down : 0
    return [p[0] + out * Math.cos(azimuth), p[1] - out * Math.sin(azimuth), p[2] + up]
  })
}
