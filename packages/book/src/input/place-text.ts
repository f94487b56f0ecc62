import type { Quantity } from '@lodebook/reckon/units'
import type { Place, Turn } from '../place.ts'
import { isPlainStation, readPlace } from './place.ts'

/** A place in words that readPlace reads back as the same place. */
export function placeText(place: Place): string {
  switch (place.by) {
    case 'station': {
      const toward = place.toward === undefined ? '' : ` toward ${quoted(place.toward)}`
      const along = place.along === undefined ? '' : ` + ${lengthText(place.along)}`
      return [`${quoted(place.station)}${along}${toward}`, ...(place.side === undefined ? [] : [place.side]), ...heightText(place.height), ...accuracyText(place.accuracy)].join(', ')
    }
    case 'tapes':
      return [`${lengthText(place.first.distance)} from ${quoted(place.first.station)} and ${lengthText(place.second.distance)} from ${quoted(place.second.station)}`,
        ...(place.turn === undefined ? [] : [turnText(place.turn)]), ...heightText(place.height), ...accuracyText(place.accuracy)].join(', ')
    case 'grid': return place.text ?? `E ${place.east} N ${place.north}${place.up === undefined ? '' : ` U ${place.up}`}${doubtText(place.accuracy)}`
    case 'gps': return place.text ?? `${decimal(place.latitude)}, ${decimal(place.longitude)}${place.elevation === undefined ? '' : `, ${place.elevation} m`}${doubtText(place.accuracy)}`
    case 'words': {
      const read = readPlace(place.words)
      return read.ok && read.value.by === 'words' && read.value.words === place.words ? place.words : `words: ${place.words}`
    }
  }
}

/** A length as written, with the unit that was taken for it when it had none. */
const lengthText = (length: Quantity): string => length.from === undefined ? length.text : `${length.text} ${length.from}`
const heightText = (height: Quantity | undefined): readonly string[] => height === undefined ? [] : [`${lengthText(height)} up`]
const accuracyText = (accuracy: Quantity | undefined): readonly string[] => accuracy === undefined ? [] : [`± ${lengthText(accuracy)}`]
/** On which hand of the line, or above or below it. */
export const turnText = (turn: Turn): string => turn === 'left' || turn === 'right' ? `${turn} of the line` : `${turn} the line`
const doubtText = (accuracy: number | undefined): string => accuracy === undefined ? '' : ` ± ${accuracy}`
const decimal = (degrees: number): string => /\./.test(String(degrees)) ? String(degrees) : String(degrees).replace(/^-?\d+/, '$&.0')

/** Quotes keep a name together that would not be taken for a station's by itself. */
const quoted = (name: string): string => isPlainStation(name) ? name : `"${name}"`
