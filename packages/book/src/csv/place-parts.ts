import { loosely } from './heading-text.ts'
import type { PlacePart } from './recipe.ts'

/** Headings under which a file may carry a part of a place. */
const partHeadings: Readonly<Record<PlacePart, readonly string[]>> = {
  toward: ['toward', 'towards', 'toward station'],
  along: ['along', 'distance along', 'distance from station', 'chainage', 'offset along'],
  side: ['side', 'wall'],
  height: ['height', 'height above sill'],
  east: ['east', 'easting', 'grid east'],
  north: ['northing', 'grid north', 'north'],
  up: ['up', 'rl', 'grid elevation'],
  latitude: ['latitude', 'lat'],
  longitude: ['longitude', 'lon', 'long', 'lng'],
  elevation: ['elevation', 'elev', 'altitude'],
  accuracy: ['accuracy', 'gps accuracy'],
}

/** The part of a place that a heading names; undefined where it names none. */
export const placePartNamed = (name: string): PlacePart | undefined =>
  (Object.keys(partHeadings) as PlacePart[]).find(part => partHeadings[part].some(heading => loosely(heading) === loosely(name)))

/** Parts that are lengths, so that their heading may carry a unit. */
export const isLengthPart = (part: PlacePart): boolean => part !== 'toward' && part !== 'side' && part !== 'latitude' && part !== 'longitude'

/**
 * A place in words, as the crew would write it, from its parts; '' when nothing is written.
 * @param said  what stands in the column of the place itself: a station, or words
 */
export function placeFromParts(said: string, parts: Readonly<Partial<Record<PlacePart, string>>>): string {
  const { toward, along, side, height, east, north, up, latitude, longitude, elevation, accuracy } = parts
  const doubt = accuracy === undefined ? '' : ` ± ${accuracy}`
  if (said === '' && east !== undefined && north !== undefined) {
    const level = up ?? elevation
    return `E ${east} N ${north}${level === undefined ? '' : ` U ${level}`}${doubt}`
  }
  if (said === '' && latitude !== undefined && longitude !== undefined) {
    return `${latitude}, ${longitude}${elevation === undefined ? '' : `, ${withMetres(elevation)}`}${accuracy === undefined ? '' : ` ± ${withMetres(accuracy)}`}`
  }
  const where = `${said}${along === undefined ? '' : ` + ${along}`}${toward === undefined ? '' : ` toward ${toward}`}`
  return [where, ...(side === undefined ? [] : [side]), ...(height === undefined ? [] : [`${height} up`])].filter(piece => piece !== '').join(', ')
}

const withMetres = (length: string): string => /[a-z]$/i.test(length) ? length : `${length} m`
