import type { Entry, Place } from '@lodebook/book'
import { isAtNought } from '@lodebook/book'
import type { Enu } from '@lodebook/reckon'
import { radians } from '@lodebook/reckon'
import { utm } from '@lodebook/reckon/survey'
import { numberOf, placeOf, textOf, valueOf } from '../read.ts'

/** How the book's grid lies on the earth. */
export interface Grid {
  /** Where grid (0, 0) is; undefined when nothing says. */
  readonly origin: { readonly latitude: number, readonly longitude: number, readonly elevation: number } | undefined
  /** Azimuth of grid north from true north, degrees clockwise. */
  readonly rotation: number
  readonly from: readonly string[]
  readonly sentence: string
  /** A GPS place in the grid; undefined when the grid is not tied to the earth. */
  readonly fromGps: (place: Extract<Place, { by: 'gps' }>) => Enu | undefined
}

/**
 * The grid of the book. Ties written as grid coordinates define it, turned from true north by the mine's rotation. Without any, the first
 * GPS tie (or else the mine's own latitude and longitude) is its origin and north is true north; lengths are true, not projected.
 */
export function gridOf(mine: Entry | undefined, ties: readonly Entry[]): Grid {
  const rotation = (mine && valueOf(mine, 'rotation')) ?? 0
  const gridTies = ties.filter(tie => placeOf(tie)?.by === 'grid')
  const gpsTies = ties.filter((tie) => { const place = placeOf(tie); return place?.by === 'gps' && !isAtNought(place) })
  if (gridTies.length > 0) {
    const both = gpsTies.find(gps => gridTies.some(tie => tie.fields.station === gps.fields.station))
    if (!both) {
      return { origin: undefined, rotation, from: gridTies.map(tie => tie.id), sentence: 'the grid of the ties', fromGps: () => undefined }
    }
    const known = placeOf(gridTies.find(tie => tie.fields.station === both.fields.station)!)! as Extract<Place, { by: 'grid' }>
    const gps = placeOf(both)! as Extract<Place, { by: 'gps' }>
    const local = localFrom({ latitude: gps.latitude, longitude: gps.longitude, elevation: gps.elevation ?? 0 }, rotation)
    return {
      origin: undefined, rotation, from: [...gridTies.map(tie => tie.id), both.id], sentence: `the grid of the ties, tied to the earth at ${textOf(both, 'station')!}`,
      fromGps: (place) => { const [e, n, u] = local(place); return [e + known.east, n + known.north, u + (known.up ?? 0)] },
    }
  }
  const first = gpsTies[0]
  const at = first ? placeOf(first)! as Extract<Place, { by: 'gps' }> : undefined
  const latitude = at?.latitude ?? (mine && numberOf(mine, 'latitude'))
  const longitude = at?.longitude ?? (mine && numberOf(mine, 'longitude'))
  if (latitude === undefined || longitude === undefined) {
    return { origin: undefined, rotation, from: [], sentence: 'a grid of its own, not tied to the earth', fromGps: () => undefined }
  }
  const datum = { latitude, longitude, elevation: 0 }
  const local = localFrom(datum, rotation)
  return {
    origin: datum, rotation, from: first ? [first.id] : mine ? [mine.id] : [],
    sentence: `metres from the GPS fix at ${first ? textOf(first, 'station')! : 'the mine'}, grid north ${rotation === 0 ? 'is true north' : `${rotation}° from true north`}`,
    fromGps: local,
  }
}

/** Offsets from an origin in true metres: transverse Mercator differences, its scale and convergence taken out at the origin. */
function localFrom(origin: { latitude: number, longitude: number, elevation: number }, rotation: number) {
  const zero = utm({ latitude: origin.latitude, longitude: origin.longitude })
  const turn = radians(zero.convergence - rotation)
  return (place: Extract<Place, { by: 'gps' }>): Enu => {
    const at = utm({ latitude: place.latitude, longitude: place.longitude, zone: zero.zone })
    const e = (at.easting - zero.easting) / zero.scale
    const n = (at.northing - zero.northing) / zero.scale
    return [e * Math.cos(turn) + n * Math.sin(turn), n * Math.cos(turn) - e * Math.sin(turn), (place.elevation ?? 0) - origin.elevation]
  }
}
