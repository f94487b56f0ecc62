import type { Field, FieldValue, Place } from '@lodebook/book'
import type { Quantity } from '@lodebook/reckon/units'
import { decimal, figures, withUnit } from './number.ts'
import { dayText, momentText } from './moment.ts'

/** A value as the crew wrote it. */
export function fieldText(value: FieldValue, field?: Field): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (typeof value === 'number') return String(value)
  if (typeof value === 'string') return field?.is.type === 'date' ? dayText(value) : field?.is.type === 'moment' ? momentText(value) : value
  if (Array.isArray(value)) return listText(value as readonly (string | Place | { class: string, count: number, mgEach: number })[])
  if ('text' in value && 'unit' in value) return value.text
  if ('amount' in value) return /[A-Za-z$€£]/.test(value.text) ? value.text : `${value.text} ${value.currency}`
  if ('by' in value) return placeWords(value)
  if ('sha256' in value) return value.name ?? value.type
  return ''
}

function listText(list: readonly (string | Place | { class: string, count: number, mgEach: number })[]): string {
  if (list.length === 0) return 'none'
  return list.map(item => typeof item === 'string' ? item : 'by' in item ? placeWords(item) : `${item.count} ${item.class} at ${item.mgEach} mg`)
    .join(list.some(item => typeof item !== 'string') ? '; ' : ', ')
}

/** What a written quantity comes to, when that is not plain from the text: '= 1.410 m'. */
export function comesTo(q: Quantity): string {
  if (q.mark === 'trace') return 'seen, not measured'
  if (q.mark === 'nil') return 'looked for, none'
  if (q.value === null) return 'no figure'
  const places = q.unit === 'm' ? 3 : q.unit === 'deg' ? (Number.isInteger(q.value) ? 0 : 2) : undefined
  const number = places === undefined ? figures(q.value, 4) : decimal(q.value, places)
  const sign = q.mark === 'below' ? 'less than ' : q.mark === 'above' ? 'more than ' : q.mark === 'about' ? 'about ' : ''
  return `${sign}${withUnit(number, q.unit)}${q.from === undefined ? '' : `, ${q.from} taken as the unit`}`
}

/** Where, as one would say it underground. */
export function placeWords(place: Place): string {
  switch (place.by) {
    case 'station': return [
      place.along ? `${place.along.text}${bare(place.along)} from ${place.station}` : `at ${place.station}`,
      place.toward ? `${place.along ? 'towards' : 'looking to'} ${place.toward}` : '',
      place.side ?? '', place.height ? `${place.height.text}${bare(place.height)} above the sill` : '', goodTo(place.accuracy),
    ].filter(Boolean).join(', ')
    case 'tapes': return `${place.first.distance.text}${bare(place.first.distance)} from ${place.first.station} and ${place.second.distance.text}${bare(place.second.distance)} from ${place.second.station}${!place.turn ? '' : place.turn === 'above' || place.turn === 'below' ? `, ${place.turn} the line` : `, on the ${place.turn}`}${place.accuracy ? `, ${goodTo(place.accuracy)}` : ''}`
    case 'grid': return place.text ?? `${decimal(place.east, 1)} E ${decimal(place.north, 1)} N${place.up === undefined ? '' : `, ${decimal(place.up, 1)} m up`}`
    case 'gps': return place.text ?? `${place.latitude.toFixed(5)}°, ${place.longitude.toFixed(5)}°${place.accuracy === undefined ? '' : `, good to ${decimal(place.accuracy, 0)} m`}`
    case 'words': return place.words
  }
}

const goodTo = (q: Quantity | undefined): string => q ? `good to ${q.text}${bare(q)}` : ''
const bare = (q: Quantity): string => q.from ? ` ${q.from}` : ''
