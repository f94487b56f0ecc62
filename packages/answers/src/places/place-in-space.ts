import type { Place } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import { fromTapes } from './from-tapes.ts'
import { noStation, plus, together } from './located.ts'
import type { Located, PlaceContext, Unlocated } from './located.ts'

export { isLocated } from './located.ts'
export type { Located, PlaceContext, StationPlace, Unlocated, Walls } from './located.ts'

/**
 * A place in the grid, with one standard deviation of each coordinate, or why it can't be put anywhere yet.
 *
 * From a station: along the line to the other station, out to the rock on the named side by the offsets taped there (those of both ends,
 * in proportion), up from the sill by the height. The mark's own doubt is the station's, the tape's along the heading and, where no offset
 * was taped, half of a usual opening; an accuracy written with the place stands instead of the mark's own.
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
  if (!start) return { why: noStation(place.station, context) }
  const along = place.along?.value ?? 0
  const towardName = place.toward ?? start.onward
  const toward = towardName === undefined ? undefined : context.stations.get(towardName)
  if (place.toward !== undefined && !toward) return { why: noStation(place.toward, context) }
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
    point, how, sigma: place.accuracy?.value != null ? together(start.sigma, place.accuracy.value) : together(start.sigma, context.precision, wallDoubt),
    from: [...start.entries, ...(toward?.entries ?? [])],
  }
}
