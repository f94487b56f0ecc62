import { readPlace } from '@lodebook/book/input'
import { editText } from './edit-text.ts'

export const waysToSay = ['station', 'tapes', 'grid', 'gps', 'words'] as const
export type WayToSay = typeof waysToSay[number]

/** A place in pieces, as typed. */
export interface PlaceParts { readonly by: WayToSay, readonly [part: string]: string }

/** The text that the pieces come to; '' when nothing is typed yet. The one reader of places reads it back. */
export function placeFromParts(p: PlaceParts): string {
  const got = (name: string): string => p[name]?.trim() ?? ''
  const quoted = (name: string): string => got(name) === '' ? '' : `"${got(name).replaceAll('"', '')}"`
  const height = [...got('height') === '' ? [] : [`${got('height')} up`], ...got('good') === '' ? [] : [`± ${got('good')}`]]
  switch (p.by) {
    case 'station': {
      if (got('station') === '') return ''
      const along = got('along') === '' ? '' : ` + ${got('along')}`, toward = got('toward') === '' ? '' : ` toward ${quoted('toward')}`
      return [`${quoted('station')}${along}${toward}`, ...got('side') === '' ? [] : [got('side')], ...height].join(', ')
    }
    case 'tapes': return got('first') === '' || got('second') === '' ? ''
      : [`${got('firstTape')} from ${quoted('first')} and ${got('secondTape')} from ${quoted('second')}`, ...got('turn') === '' ? [] : [got('turn') === 'left' || got('turn') === 'right' ? `${got('turn')} of the line` : `${got('turn')} the line`], ...height].join(', ')
    case 'grid': return got('east') === '' && got('north') === '' ? '' : `E ${got('east')} N ${got('north')}${got('up') === '' ? '' : ` U ${got('up')}`}`
    case 'gps': return got('latitude') === '' && got('longitude') === '' ? '' : `${got('latitude')}, ${got('longitude')}${got('accuracy') === '' ? '' : ` ± ${got('accuracy')}`}`
    case 'words': return got('words') === '' ? '' : `words: ${got('words')}`
  }
}

/**
 * The pieces of a place written before.
 * @param unit  of lengths that stand there without one
 */
export function partsOfPlace(text: string, unit = ''): PlaceParts {
  const read = text.trim() === '' ? undefined : readPlace(text, unit === '' ? {} : { unit })
  if (!read?.ok) return { by: 'station' }
  const place = read.value
  switch (place.by) {
    case 'station': return {
      by: 'station', station: place.station, toward: place.toward ?? '', along: place.along ? editText(place.along) : '', side: place.side ?? '',
      height: place.height ? editText(place.height) : '', good: place.accuracy ? editText(place.accuracy) : '',
    }
    case 'tapes': return {
      by: 'tapes', first: place.first.station, firstTape: editText(place.first.distance), second: place.second.station, secondTape: editText(place.second.distance),
      turn: place.turn ?? '', height: place.height ? editText(place.height) : '', good: place.accuracy ? editText(place.accuracy) : '',
    }
    case 'grid': return { by: 'grid', east: String(place.east), north: String(place.north), up: place.up === undefined ? '' : String(place.up) }
    case 'gps': return { by: 'gps', latitude: String(place.latitude), longitude: String(place.longitude), accuracy: place.accuracy === undefined ? '' : String(place.accuracy) }
    case 'words': return { by: 'words', words: place.words }
  }
}
