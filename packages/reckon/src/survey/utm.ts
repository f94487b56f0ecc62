import type { Degrees } from '../core/index.ts'
import type { MercatorFrame, Projected } from './transverse-mercator.ts'
import { finite, InputError } from '../core/index.ts'
import { signedAngle } from './angles.ts'
import { ellipsoidOf } from './ellipsoids.ts'
import { project, unproject } from './transverse-mercator.ts'

export type Hemisphere = 'N' | 'S'

export interface UtmPoint extends Projected {
  readonly zone: number
  readonly hemisphere: Hemisphere
}

/** Farther than this from its central meridian a zone is surely the wrong one; the series is still exact to nanometres there. */
const farthest = 30

export interface GeographicPlace {
  readonly latitude: Degrees
  readonly longitude: Degrees
  readonly zone?: number | undefined
  readonly ellipsoid?: string | undefined
}

/**
 * Universal Transverse Mercator coordinates of a place, metres.
 * @param latitude  [-80, 84], the bounds of UTM; longitude [-180, 360), east positive
 * @param zone  1 to 60; left out, the zone the place lies in, with the wider zones of south-western Norway (32V) and Svalbard (31X, 33X, 35X,
 *              37X). A zone given is used as given, so that a mine on a zone's edge keeps one grid
 * @param ellipsoid  a name in `ellipsoids`; the datum is not changed
 * @throws InputError for a place outside UTM, or more than 30° from the zone's central meridian
 * Accuracy: see project; zones after DMA TM 8358.2 (1989) (M).
 */
export function utm({ latitude, longitude, zone, ellipsoid = 'WGS84' }: GeographicPlace): UtmPoint {
  if (!(latitude >= -80 && latitude <= 84)) throw new InputError('latitude', latitude, 'degrees from -80 to 84, where UTM reaches')
  if (!(longitude >= -180 && longitude <= 360)) throw new InputError('longitude', longitude, 'degrees from -180 to 180, east positive')
  const east = signedAngle(longitude)
  const used = zone ?? utmZone(latitude, east)
  const hemisphere = latitude < 0 ? 'S' : 'N'
  const frame = utmFrame(used, hemisphere, ellipsoid)
  if (Math.abs(signedAngle(east - frame.meridian)) > farthest) throw new InputError('zone', zone, `a zone within ${farthest}° of longitude ${longitude}`)
  return { zone: used, hemisphere, ...project(frame, latitude, east) }
}

export interface UtmGridPoint {
  readonly zone: number
  /** N or S, or in full. */
  readonly hemisphere: string
  readonly easting: number
  readonly northing: number
  readonly ellipsoid?: string | undefined
}

/**
 * The place of UTM coordinates.
 * @param easting  metres, -2,500,000 to 3,500,000 (30° and more from the meridian); a point in its own zone has 160,000 to 840,000
 * @param northing  metres, 0 to 10,000,000
 * @throws InputError outside these, or for a name or number that is not one
 */
export function utmInverse({ zone, hemisphere, easting, northing, ellipsoid = 'WGS84' }: UtmGridPoint): { readonly latitude: Degrees, readonly longitude: Degrees } {
  finite(easting, 'easting', 'metres')
  if (Math.abs(easting - 500000) > 3e6) throw new InputError('easting', easting, 'metres from -2,500,000 to 3,500,000')
  if (!(northing >= 0 && northing <= 1e7)) throw new InputError('northing', northing, 'metres from 0 to 10,000,000')
  return unproject(utmFrame(zone, hemisphereOf(hemisphere), ellipsoid), easting, northing)
}

/** The zone a place lies in, 1 to 60. */
export function utmZone(latitude: Degrees, longitude: Degrees): number {
  const east = signedAngle(longitude)
  if (latitude >= 56 && latitude < 64 && east >= 3 && east < 12) return 32
  if (latitude >= 72 && east >= 0 && east < 42) return east < 9 ? 31 : east < 21 ? 33 : east < 33 ? 35 : 37
  return Math.floor((east === 180 ? 0 : east + 180) / 6) + 1
}

/** A zone's grid. */
export function utmFrame(zone: number, hemisphere: Hemisphere, ellipsoid: string): MercatorFrame {
  if (!(Number.isInteger(zone) && zone >= 1 && zone <= 60)) throw new InputError('zone', zone, 'a whole number from 1 to 60')
  return { ellipsoid: ellipsoidOf(ellipsoid), meridian: 6 * zone - 183, scale: 0.9996, falseEasting: 500000, falseNorthing: hemisphere === 'S' ? 1e7 : 0 }
}

function hemisphereOf(text: string): Hemisphere {
  const first = text.trim().toUpperCase()
  if (first === 'N' || first === 'NORTH') return 'N'
  if (first === 'S' || first === 'SOUTH') return 'S'
  throw new InputError('hemisphere', text, 'N or S')
}
