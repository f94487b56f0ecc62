import type { Entry } from '@lodebook/book'
import { entryTitle } from '../entry-title.ts'
import type { StationPlace } from '../places/place-in-space.ts'
import { placeOf } from '../read.ts'
import { figure } from '../words.ts'
import type { SecondLook } from './second-look.ts'

/** Marks taped further than the other station is: past it by more than a tenth and a metre, which no tape is off by. */
export function oddPlaces(entries: readonly Entry[], stations: ReadonlyMap<string, StationPlace>): readonly SecondLook[] {
  return entries.flatMap((entry): SecondLook[] => {
    const place = placeOf(entry)
    if (place?.by !== 'station' || place.toward === undefined || place.along?.value == null) return []
    const a = stations.get(place.station), b = stations.get(place.toward)
    if (!a || !b) return []
    const apart = Math.hypot(b.point[0] - a.point[0], b.point[1] - a.point[1], b.point[2] - a.point[2])
    if (place.along.value <= 1.1 * apart + 1) return []
    return [{
      sort: 'place', entries: [entry.id], times: place.along.value / apart,
      sentence: `${entryTitle(entry)} is written ${place.along.text} from ${place.station} toward ${place.toward}, but they are only ${figure(apart, 3)} m apart.`,
      todo: 'Tape it again, or see which unit or which stations were meant.',
    }]
  })
}
