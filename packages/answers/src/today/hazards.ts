import type { Entry } from '@lodebook/book'
import type { Located } from '../places/place-in-space.ts'
import { placeOf, textOf } from '../read.ts'
import { placeName } from './place-name.ts'
import type { HazardMet } from './shapes.ts'
import type { Way } from './way-in.ts'

const stationNamed = (words: string, way: Way): string | undefined => way.stations.map(s => s.name).filter(name => new RegExp(`\\b${name.replace(/[^A-Za-z0-9]/g, '\\$&')}\\b`).test(words)).at(-1)

/** Hazards that are not dealt with, by distance along the way in; those without a place come first, since they may be anywhere. */
export function hazardsMet(hazards: readonly Entry[], at: ReadonlyMap<string, Located>, way: Way | undefined): readonly HazardMet[] {
  return hazards.filter(entry => textOf(entry, 'state') !== 'dealt with').map((entry): HazardMet => {
    const place = placeOf(entry), near = place?.by === 'words' && way ? stationNamed(place.words, way) : place?.by === 'station' ? place.station : undefined
    return {
      entry: entry.id, sort: textOf(entry, 'sort') ?? 'other', where: placeName(place), state: textOf(entry, 'state') ?? 'open', seen: textOf(entry, 'seen'),
      distance: way?.distanceOf(place?.by === 'words' && near !== undefined ? { by: 'station', station: near } : place, at.get(entry.id)),
      heading: near === undefined ? undefined : way?.headingOf(near), action: textOf(entry, 'action'), note: textOf(entry, 'note'),
    }
  }).sort((a, b) => (a.distance ?? -1) - (b.distance ?? -1))
}
