import type { Place } from '../place.ts'
import type { Read } from './read.ts'
import { says, wants } from './read.ts'

const example = 'a latitude and longitude such as 41.2, -117.3 or 41 12.5 N, 117 18.2 W'

// Degrees, with minutes and seconds if any, and the side of the equator or of Greenwich before or after.
const angle = (sides: string): string => String.raw`([${sides}])? ?([+-]?\d{1,3}(?:\.\d+)?(?:e-\d+)?) ?°?(?: ?(\d{1,2}(?:\.\d+)?) ?['′]?(?: ?(\d{1,2}(?:\.\d+)?) ?["″]?)?)? ?([${sides}])?`
const metres = String.raw`(\d+(?:\.\d+)?(?:e[+-]?\d+)?)(?: ?m)?`
const form = new RegExp(`^${angle('NS')}(?:, ?| )${angle('EW')}(?:, ?(-?\\d+(?:\\.\\d+)?(?:e[+-]?\\d+)?) ?m?)?(?: ?,? ?(?:±|\\+/-) ?${metres})?$`, 'i')

/**
 * Reads a position on the globe: `41.2, -117.3`, `41 12.5 N, 117 18.2 W`, `41°12'30"N 117°18'12"W`, with elevation and accuracy in metres.
 * Undefined when it has not that form.
 */
export function readGps(written: string): Read<Place> | undefined {
  const m = form.exec(written)
  if (m === null) return undefined
  const lettered = [m[1], m[5], m[6], m[10]].some(letter => letter !== undefined)
  // Two bare numbers side by side could be anything; a comma between them makes them a pair.
  if (!lettered && !(m[2]!.includes('.') && m[7]!.includes('.') && written.includes(','))) return undefined
  const latitude = degrees(m.slice(1, 6), 'S')
  const longitude = degrees(m.slice(6, 11), 'W')
  if (latitude === undefined || longitude === undefined) return wants(example, 'because minutes and seconds go to 59 and a side is written once')
  if (Math.abs(latitude) > 90) return wants(example, 'because a latitude goes from -90 to 90')
  if (Math.abs(longitude) > 180) return wants(example, 'because a longitude goes from -180 to 180')
  const [elevation, accuracy] = [m[11], m[12]].map(part => part === undefined ? undefined : Number(part))
  if (accuracy === 0) return wants(example, 'because an accuracy is above zero')
  const plain = !lettered && m[3] === undefined && m[8] === undefined
  return says({
    by: 'gps', latitude, longitude, ...(elevation === undefined ? {} : { elevation }), ...(accuracy === undefined ? {} : { accuracy }), ...(plain ? {} : { text: written }),
  })
}

function degrees([before, whole, minutes, seconds, after]: readonly (string | undefined)[], negative: string): number | undefined {
  const letter = before ?? after
  if (before !== undefined && after !== undefined) return undefined
  const size = Number(whole)
  if (letter !== undefined && size < 0) return undefined
  const [min, sec] = [Number(minutes ?? 0), Number(seconds ?? 0)]
  if (min >= 60 || sec >= 60 || (minutes !== undefined && !Number.isInteger(size)) || (seconds !== undefined && !Number.isInteger(min))) return undefined
  const magnitude = Math.abs(size) + (min * 60 + sec) / 3600
  return letter?.toUpperCase() === negative || whole!.startsWith('-') ? -magnitude : magnitude
}
