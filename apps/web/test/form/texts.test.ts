import { kinds } from '@lodebook/book'
import type { Entry, FieldValue, Place } from '@lodebook/book'
import { readField, readPlace } from '@lodebook/book/input'
import { expect, it } from 'vitest'
import { editText } from '../../src/form/edit-text.ts'
import { nextName } from '../../src/form/next-name.ts'
import { partsOfPlace, placeFromParts } from '../../src/form/place-parts.ts'
import { reading } from '../../src/form/reading.ts'
import { shapeOf, groups } from '../../src/form/shape.ts'
import { changes } from '../../src/form/to-draft.ts'

const shot = kinds['shot']!, sample = kinds['sample']!
const inFeet = { fieldUnits: { distance: 'ft' } }

it('says how a tape was understood', () => {
  expect(reading('distance', shot.fields['distance']!, '4\' 7½"', inFeet).echo).toBe('4\' 7½" = 1.410\u00a0m')
  expect(reading('distance', shot.fields['distance']!, '4.63', inFeet).echo).toBe('4.63 = 1.411\u00a0m, ft taken as the unit')
  expect(reading('azimuth', shot.fields['azimuth']!, 'N 23 E', {}).echo).toBe('N 23 E = 23°')
  expect(reading('mass', sample.fields['mass']!, '2.4 kg', {}).echo).toBe('2.4 kg = 2,400\u00a0g')
})

it('says in place what will not do, and asks where it can be read two ways', () => {
  expect(reading('azimuth', shot.fields['azimuth']!, '370', {}).problem).toMatch(/0 to 360/)
  expect(reading('inclination', shot.fields['inclination']!, '95', {}).problem).toMatch(/90/)
  expect(reading('mass', sample.fields['mass']!, '2.4', {}).problem).toMatch(/unit/)
  expect(reading('distance', shot.fields['distance']!, '', inFeet)).toEqual({ echo: '', problem: '' })
})

it('the next name in a run, unless it is taken or there is no number', () => {
  expect(nextName('B-017', new Set())).toBe('B-018')
  expect(nextName('A9', new Set())).toBe('A10')
  expect(nextName('B-099', new Set())).toBe('B-100')
  expect(nextName('B-017', new Set(['B-018']))).toBe('')
  expect(nextName('portal', new Set())).toBe('')
})

const places: readonly string[] = [
  'A6 + 2.3 m toward A7, left rib, 1.2 m up', 'A6', 'A6 + 4\'7½" toward "old face", back', '3.2 m from A6 and 4.1 m from A7, left of the line, 1.2 m up',
  'E 512.3 N 204.1 U 98', '41.2, -117.3 ± 5', 'words: somewhere past the winze',
]
it.each(places)('a place taken apart and put together is the same place: %s', (text) => {
  const read = readPlace(text), again = readPlace(placeFromParts(partsOfPlace(text)))
  expect(read.ok && again.ok).toBe(true)
  expect(plain(again.ok && again.value)).toEqual(plain(read.ok && read.value))
})
const plain = (place: false | Place) => JSON.parse(JSON.stringify(place).replaceAll(/"text":"[^"]*",/g, '')) as unknown

it('a place with nothing typed is no place', () => {
  for (const by of ['station', 'tapes', 'grid', 'gps', 'words'] as const) expect(placeFromParts({ by })).toBe('')
})

const written: readonly [string, string, string, object][] = [
  ['shot', 'distance', '4.63', inFeet], ['shot', 'surveyors', 'Ada, Bo', {}], ['sample', 'place', 'A6 + 2.3 m toward A7, left rib', {}], ['pan', 'colours', '12 fine at 0.05 mg; 2 coarse at 1.5 mg', {}],
  ['worked-out', 'corners', 'A6, back\nA7 + 2 m toward A8, back\nA8, sill', {}], ['cost', 'amount', '40', { currency: 'USD' }], ['assay', 'gold', '<0.005 oz/ton', {}], ['relic', 'left', 'yes', {}],
  ['heading', 'stations', 'A1, A2, A1', {}], ['ground', 'found', 'drummy, open joint', {}], ['relic', 'count', '3', {}],
]
it.each(written)('%s %s written %s opens for mending as text that changes nothing', (kindId, name, text, options) => {
  const kind = kinds[kindId]!, field = kind.fields[name]!, read = readField(field, text, options, name)
  expect(read.ok).toBe(true)
  const value = (read as { value: FieldValue }).value
  const entry = { fields: { [name]: value } } as unknown as Entry
  const again = reading(name, field, editText(value), {})
  expect(changes(kind, { [name]: again }, entry)).toEqual({})
})

it('only what changed is written, and a field that was emptied is taken away', () => {
  const q = (text: string) => (readField(shot.fields['distance']!, text, {}, 'distance') as { value: FieldValue }).value
  const entry = { fields: { from: 'A6', to: 'A7', distance: q('4 m'), note: 'wet' } } as unknown as Entry
  const now = (texts: Record<string, string>) => Object.fromEntries(Object.entries(texts).map(([n, t]) => [n, reading(n, shot.fields[n]!, t, {})]))
  expect(changes(shot, now({ from: 'A6', to: 'A8', distance: '4 m', note: '' }), entry)).toEqual({ to: 'A8', note: null })
  expect(changes(shot, now({ from: 'A6', note: '' }), undefined)).toEqual({ from: 'A6' })
})

it('every kind stands once on the page for writing, and its form holds every field once', () => {
  expect(groups.flatMap(g => g.kinds).sort()).toEqual(Object.keys(kinds).sort())
  for (const kind of Object.values(kinds)) {
    const { first, rest } = shapeOf(kind)
    expect([...first, ...rest].sort()).toEqual(Object.keys(kind.fields).sort())
    expect(rest.filter(name => kind.fields[name]!.required)).toEqual([])
  }
})
