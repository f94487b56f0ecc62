import { parseQuantity } from '@lodebook/reckon/units'
import type { Quantity } from '@lodebook/reckon/units'
import type { Place, Side, Turn } from '../place.ts'
import { sides } from '../place.ts'
import { stationSchema } from '../schema/value-schemas.ts'
import { readGps } from './place-gps.ts'
import type { Read } from './read.ts'
import { says, wants } from './read.ts'

export interface PlaceOptions {
  /** The unit of lengths written without one; metres for grid coordinates unless said. */
  readonly unit?: string
  /** Stations of the book, so that a name with spaces is known for one. */
  readonly stations?: ReadonlySet<string>
}

const example = 'a place such as A6 + 2.3 m toward A7, left rib, 1.2 m up; E 512.3 N 204.1 U 98; 41.2, -117.3; or words'

/**
 * Reads a place as the crew writes it.
 *
 * From a station `A6 + 2.3 m toward A7, left rib, 1.2 m up, ± 0.3 m`; by tape from two `3.2 m from A6 and 4.1 m from A7, left, 1.2 m up`
 * (or `above the line`); grid
 * `E 512.3 N 204.1 U 98 ± 0.5` in metres unless a unit is written; GPS `41.2, -117.3, 1650 m ± 5 m`. Anything else is kept as words, and
 * `words: A6` keeps words that would read as something else. A station's name with spaces stands in quotes unless the book knows it.
 */
export function readPlace(text: string, options: PlaceOptions = {}): Read<Place> {
  const words = /^words: ?(.+)$/i.exec(text.trim())
  if (words) return says({ by: 'words', words: words[1]! })
  const written = text.trim().replace(/\s+/g, ' ')
  if (written === '') return wants(example)
  return grid(written, options) ?? readGps(written) ?? tapes(written, options) ?? station(written, options) ?? says({ by: 'words', words: text.trim().replace(/[\n\t]+/g, ' ') })
}

const name = String.raw`"[^"]+"|[^,;+"]+?`
const towards = String.raw`(?:towards?|->|→|to)`
const forms = [
  new RegExp(`^(?<station>${name}) ?\\+ ?(?<along>.+?)(?: ?${towards} ?(?<toward>${name}))?$`, 'i'),
  new RegExp(`^(?<along>.+?) from (?<station>${name})(?: ${towards} (?<toward>${name}))?$`, 'i'),
  new RegExp(`^(?<station>${name}) ${towards} (?<toward>${name})$`, 'i'),
  new RegExp(`^(?<station>${name})$`, 'i'),
]

interface ByStation { by: 'station', station: string, toward?: string, along?: Quantity, side?: Side, height?: Quantity, accuracy?: Quantity }

function station(written: string, options: PlaceOptions): Read<Place> | undefined {
  const [where = '', ...rest] = parts(written)
  const found = forms.map(form => form.exec(where)?.groups).find(groups => groups !== undefined)
  if (found === undefined) return undefined
  const { station: from = '', toward, along: distance } = found
  const place: ByStation = { by: 'station', station: bare(from), ...(toward === undefined ? {} : { toward: bare(toward) }) }
  // Without a station's name, or a distance towards one, it is a sentence that happens to hold these words.
  const meant = from.startsWith('"') || looksLikeStation(place.station, options) || (distance !== undefined && /\d/.test(distance) && toward !== undefined)
  if (!meant) return undefined
  const wrong = [place.station, place.toward].find(it => it !== undefined && !stationSchema.safeParse(it).success)
  if (wrong !== undefined) return wants(example, `because ${JSON.stringify(wrong)} is not a station's name`)
  if (distance !== undefined) {
    const along = length(distance, options)
    if (!along.ok) return along
    place.along = along.value
  }
  const plain = distance === undefined && toward === undefined
  return sideAndHeight(place, rest, options, plain)
}

/** Adds side and height. A bare name followed by something else, `A6, near the old cart`, is words. */
function sideAndHeight(place: ByStation, rest: readonly string[], options: PlaceOptions, plain: boolean): Read<Place> | undefined {
  for (const part of rest) {
    const side = readSide(part)
    if (side !== undefined) {
      if (place.side !== undefined) return wants(example, 'because two sides are written')
      place.side = side
      continue
    }
    const doubt = readAccuracy(part, options)
    if (doubt !== undefined) {
      if (!doubt.ok) return doubt
      place.accuracy = doubt.value
      continue
    }
    const height = readHeight(part, options)
    if (height === undefined) return plain ? undefined : wants(example, `because ${JSON.stringify(part)} is neither a side, a height nor an accuracy`)
    if (!height.ok) return height
    place.height = height.value
  }
  return says(place)
}

const fromTape = new RegExp(`^(.+?) from (${name})$`, 'i')

function tapes(written: string, options: PlaceOptions): Read<Place> | undefined {
  if (!/ from .+ from /i.test(written)) return undefined
  const [a = '', b = '', ...rest] = parts(written.replace(/,? (?:and|&) /i, ', '))
  const [first, second] = [fromTape.exec(a), fromTape.exec(b)]
  if (first === null || second === null) return undefined
  const [near, far] = [length(first[1]!, options), length(second[1]!, options)]
  if (!near.ok) return near
  if (!far.ok) return far
  const place: { by: 'tapes', first: { station: string, distance: Quantity }, second: { station: string, distance: Quantity }, turn?: Turn, height?: Quantity, accuracy?: Quantity } = {
    by: 'tapes', first: { station: bare(first[2]!), distance: near.value }, second: { station: bare(second[2]!), distance: far.value },
  }
  for (const part of rest) {
    const turn = /^(left|right|above|below)(?: (?:of )?the line)?$/i.exec(part)
    if (turn) { place.turn = turn[1]!.toLowerCase() as Turn; continue }
    const doubt = readAccuracy(part, options)
    if (doubt !== undefined) {
      if (!doubt.ok) return doubt
      place.accuracy = doubt.value
      continue
    }
    const height = readHeight(part, options)
    if (height === undefined) return wants(example, `because ${JSON.stringify(part)} is neither left, right, above, below, a height nor an accuracy`)
    if (!height.ok) return height
    place.height = height.value
  }
  return says(place)
}

const number = String.raw`[+-]?\d+(?:,\d{3})*(?:\.\d+)?(?:e[+-]?\d+)?(?: ?(?:m|ft|feet|metres?|meters?)\b)?`
const gridForm = new RegExp(`^E ?[:=]? ?(${number})[,;]? N ?[:=]? ?(${number})(?:[,;]? (?:U|Z|El\\.?) ?[:=]? ?(${number}))?(?:[,;]? ?(?:±|\\+/-) ?(${number}))?$`, 'i')

function grid(written: string, { unit = 'm' }: PlaceOptions): Read<Place> | undefined {
  const m = gridForm.exec(written)
  if (m === null) return undefined
  const metres: (number | undefined)[] = []
  for (const part of m.slice(1)) {
    const read = part === undefined ? undefined : parseQuantity(part, 'length', { defaultUnit: unit })
    if (read?.ok === false) return wants(example, read.problem.why)
    metres.push(read?.quantity.value ?? undefined)
  }
  const [east, north, up, accuracy] = metres
  if (accuracy !== undefined && !(accuracy > 0)) return wants(example, 'because an accuracy is above zero')
  const inMetres = unit === 'm' && !/ft|feet/i.test(written)
  const text = inMetres ? undefined : m.slice(1).some(part => part !== undefined && !/[a-z]$/i.test(part)) ? withUnit(m.slice(1), unit) : written
  return says({ by: 'grid', east: east!, north: north!, ...(up === undefined ? {} : { up }), ...(accuracy === undefined ? {} : { accuracy }), ...(text === undefined ? {} : { text }) })
}

/** The coordinates with their unit written out, so that the text stands by itself. */
const withUnit = (written: readonly (string | undefined)[], unit: string): string => written.flatMap((part, i) =>
  part === undefined ? [] : [`${['E', 'N', 'U', '±'][i]!} ${/[a-z]$/i.test(part) ? part : `${part} ${unit}`}`]).join(' ')

/** At commas and semicolons, but not inside 1,250. */
const parts = (written: string): readonly string[] => written.split(/;\s*|,(?!\d)\s*/).map(part => part.trim()).filter(part => part !== '')

const bare = (written: string): string => written.trim().replace(/^"(.*)"$/, '$1')

/** A station's name is one short word with a figure in it, unless the book knows it or quotes say so. */
export const isPlainStation = (word: string): boolean => /^(?=\S*\d)\S{1,12}$/.test(word)
const looksLikeStation = (word: string, { stations }: PlaceOptions): boolean => isPlainStation(word) || stations?.has(word) === true

const sideWords: Readonly<Record<string, Side>> = {
  ...Object.fromEntries(sides.map(side => [side, side])), left: 'left rib', right: 'right rib', 'left wall': 'left rib', 'right wall': 'right rib', roof: 'back',
  floor: 'sill', 'left side': 'left rib', 'right side': 'right rib', centre: 'middle', center: 'middle',
}

/** A side of the opening in the words a crew uses for it. */
export const readSide = (text: string): Side | undefined => {
  const word = text.trim().toLowerCase().replace(/^(?:in|on|at) (?:the )?/, '')
  return Object.hasOwn(sideWords, word) ? sideWords[word] : undefined
}

function length(text: string, { unit }: PlaceOptions): Read<Quantity> {
  const parsed = parseQuantity(text, 'length', unit === undefined ? {} : { defaultUnit: unit })
  return parsed.ok ? says(parsed.quantity) : wants(parsed.problem.expected, parsed.problem.why)
}

function readHeight(part: string, options: PlaceOptions): Read<Quantity> | undefined {
  const m = /^(.+?) (up|high|above the sill|above sill|down|below the sill)$/i.exec(part)
  if (m === null) return undefined
  return length(/^(down|below)/i.test(m[2]!) ? `-${m[1]!}` : m[1]!, options)
}

/** `± 0.3 m` or `+/- 1 ft`: what a place is good to. Undefined when the words are not that. */
function readAccuracy(part: string, options: PlaceOptions): Read<Quantity> | undefined {
  const m = /^(?:±|\+\/-) ?(.+)$/.exec(part)
  if (m === null) return undefined
  const read = length(m[1]!, options)
  return read.ok && !((read.value.value ?? 0) > 0) ? wants('an accuracy above zero', 'because no place is known without any doubt') : read
}
