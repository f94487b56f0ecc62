import type { Place } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import type { Grid } from '../survey/grid.ts'

/** Where a station is and how far it is to the rock around it, as the place-finder needs it. */
export interface StationPlace {
  readonly point: Enu
  readonly sigma: Enu
  readonly entries: readonly string[]
  /** Offsets to the rock seen looking along a direction: level, azimuth in degrees. */
  readonly walls: (azimuth: number) => Walls
  /** The next station on, when only one way leads on. */
  readonly onward: string | undefined
}

export interface Walls { readonly left: number, readonly right: number, readonly up: number, readonly down: number, readonly taped: boolean }

export interface Located { readonly point: Enu, readonly sigma: Enu, readonly how: string, readonly from: readonly string[] }
export interface Unlocated { readonly why: string }
export const isLocated = (found: Located | Unlocated): found is Located => 'point' in found

export interface PlaceContext {
  readonly stations: ReadonlyMap<string, StationPlace>
  readonly grid: Grid
  /** One standard deviation of a mark taped along a heading, m. */
  readonly precision: number
}

const plus = (a: Enu, b: Enu, times = 1): Enu => [a[0] + times * b[0], a[1] + times * b[1], a[2] + times * b[2]]
const together = (a: Enu, ...more: readonly number[]): Enu => a.map(value => Math.hypot(value, ...more)) as unknown as Enu

/**
 * A place in the grid, with one standard deviation of each coordinate, or why it can't be put anywhere yet.
 *
 * From a station: along the line to the other station, out to the rock on the named side by the offsets taped there (those of both ends,
 * in proportion), up from the sill by the height. The mark's own doubt is the station's, the tape's along the heading and, where no offset
 * was taped, half of a usual opening.
 */
export function locate(place: Place | undefined, context: PlaceContext): Located | Unlocated {
  if (!place) return { why: 'no place was written' }
  switch (place.by) {
    case 'words': return { why: `known in words only: ${place.words}` }
    case 'grid': {
      const accuracy = place.accuracy ?? 0.5
      return { point: [place.east, place.north, place.up ?? 0], sigma: [accuracy, accuracy, place.up === undefined ? 10 : accuracy], how: 'grid coordinates', from: [] }
    }
    case 'gps': {
      const point = context.grid.fromGps(place)
      if (!point) return { why: 'a GPS fix, but nothing ties the grid to the earth' }
      const accuracy = place.accuracy ?? 5
      return { point, sigma: [accuracy, accuracy, 2 * accuracy], how: 'GPS fix', from: context.grid.from }
    }
    case 'station': return fromStation(place, context)
    case 'tapes': return fromTapes(place, context)
  }
}

function fromStation(place: Extract<Place, { by: 'station' }>, context: PlaceContext): Located | Unlocated {
  const start = context.stations.get(place.station)
  if (!start) return { why: `station ${place.station} has not been surveyed` }
  const along = place.along?.value ?? 0
  const towardName = place.toward ?? start.onward
  const toward = towardName === undefined ? undefined : context.stations.get(towardName)
  if (place.toward !== undefined && !toward) return { why: `station ${place.toward} has not been surveyed` }
  if (!toward && along > 0) return { why: `${along} m from ${place.station}, but it does not say towards which station` }

  const line = toward ? plus(toward.point, start.point, -1) : [0, 1, 0] as const
  const reach = Math.hypot(...line)
  const share = reach > 0 ? along / reach : 0
  const azimuth = Math.atan2(line[0], line[1]) * 180 / Math.PI
  const here = start.walls(azimuth)
  const there = toward?.walls(azimuth) ?? here
  const blend = (side: 'left' | 'right' | 'up' | 'down') => here[side] + (there[side] - here[side]) * Math.min(1, Math.max(0, share))
  let point = plus(start.point, line, share)
  const level = Math.hypot(line[0], line[1])
  const right: Enu = level > 0 ? [line[1] / level, -line[0] / level, 0] : [1, 0, 0]
  const side = place.side
  if (side === 'left rib') point = plus(point, right, -blend('left'))
  if (side === 'right rib') point = plus(point, right, blend('right'))
  if (side === 'back') point = plus(point, [0, 0, 1], blend('up'))
  if (side === 'sill') point = plus(point, [0, 0, 1], -blend('down'))
  if (place.height?.value != null && side !== 'back' && side !== 'sill') point = [point[0], point[1], point[2] + place.height.value - blend('down')]
  const wallDoubt = side === undefined || side === 'middle' ? 0.3 : here.taped ? 0.1 : 0.5
  const how = [place.station, place.along ? `+ ${place.along.text}` : '', towardName ? `toward ${towardName}` : '', side ?? ''].filter(Boolean).join(' ')
  return {
    point, how, sigma: together(start.sigma, context.precision, wallDoubt),
    from: [...start.entries, ...(toward?.entries ?? [])],
  }
}

function fromTapes(place: Extract<Place, { by: 'tapes' }>, context: PlaceContext): Located | Unlocated {
  const a = context.stations.get(place.first.station)
  const b = context.stations.get(place.second.station)
  if (!a) return { why: `station ${place.first.station} has not been surveyed` }
  if (!b) return { why: `station ${place.second.station} has not been surveyed` }
  const ra = place.first.distance.value ?? 0
  const rb = place.second.distance.value ?? 0
  const base = plus(b.point, a.point, -1)
  const d = Math.hypot(base[0], base[1])
  const up = a.point[2] + (place.height?.value ?? a.walls(0).down) - a.walls(0).down
  // Slope tapes to level ones: the mark's height is known, or taken as the first station's.
  const level = (slope: number, from: number) => Math.sqrt(Math.max(0, slope * slope - (up - from) ** 2))
  const [la, lb] = [level(ra, a.point[2]), level(rb, b.point[2])]
  const x = (la * la - lb * lb + d * d) / (2 * d)
  const h2 = la * la - x * x
  const slack = 0.1 + 0.02 * Math.max(la, lb)
  if (!(d > 0) || h2 < -slack * slack) return { why: `tapes of ${place.first.distance.text} from ${place.first.station} and ${place.second.distance.text} from ${place.second.station} do not meet` }
  const y = Math.sqrt(Math.max(0, h2)) * (place.turn === 'left' ? -1 : 1)
  const [ue, un] = [base[0] / d, base[1] / d]
  const point: Enu = [a.point[0] + x * ue + y * un, a.point[1] + x * un - y * ue, up]
  const weak = context.precision * Math.max(1, Math.hypot(la, lb) / Math.max(Math.abs(y), slack))
  return { point, sigma: together(a.sigma, weak), how: `taped from ${place.first.station} and ${place.second.station}`, from: [...a.entries, ...b.entries] }
}
