import type { Place } from '@lodebook/book'
import type { Quantity } from '@lodebook/reckon/units'
import { convert } from '@lodebook/reckon/units'
import type { CrewUnits } from '../words.ts'
import { figure } from '../words.ts'

/** A length as a tape reads it: feet and inches to the half inch, or metres to the centimetre. */
export const tapeText = (metres: number, units: CrewUnits): string => units.length === 'ft' ? feetInches(metres) : `${metres.toFixed(2)} m`

function feetInches(metres: number): string {
  const halves = Math.round(convert(metres, 'm', 'in') * 2), feet = Math.floor(halves / 24), inches = halves % 24 / 2
  return feet === 0 ? `${inches} in` : inches === 0 ? `${feet} ft` : `${feet} ft ${inches} in`
}

const isFeet = (q: Quantity): boolean => /ft|feet|foot|\bin\b|inch|['"′″]/i.test(`${q.text} ${q.from ?? ''}`)

/** A taped length in the crew's units: as written when it was written in them. */
export function taped(q: Quantity, units: CrewUnits): string {
  const wantsFeet = units.length === 'ft'
  if (q.value === null || isFeet(q) === wantsFeet) return q.from === undefined ? q.text : `${q.text} ${q.from}`
  return wantsFeet ? feetInches(q.value) : `${figure(q.value, 3)} m`
}

/** A place as one would tape it again: '7 ft 3 in from A6 towards A7, left rib, 3 ft 11 in above the sill'. */
export function placeText(place: Place | undefined, units: CrewUnits): string {
  switch (place?.by) {
    case undefined: return 'no place was written'
    case 'station': return [
      place.along ? `${taped(place.along, units)} from ${place.station}` : `at ${place.station}`,
      place.toward === undefined ? '' : `${place.along ? 'towards' : 'looking to'} ${place.toward}`,
    ].filter(Boolean).join(' ') + [place.side, place.height && `${taped(place.height, units)} above the sill`].filter(Boolean).map(part => `, ${part}`).join('')
    case 'tapes': return `${taped(place.first.distance, units)} from ${place.first.station} and ${taped(place.second.distance, units)} from ${place.second.station}`
      + `${place.turn ? `, on the ${place.turn}` : ''}${place.height ? `, ${taped(place.height, units)} above the sill` : ''}`
    case 'grid': return place.text ?? `${figure(place.east, 5)} E ${figure(place.north, 5)} N`
    case 'gps': return place.text ?? `${place.latitude.toFixed(5)}°, ${place.longitude.toFixed(5)}°`
    case 'words': return place.words
  }
}
