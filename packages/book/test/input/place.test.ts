import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseQuantity } from '@lodebook/reckon/units'
import { checkValue, kinds, placeText, readPlace, sides } from '../../src/index.ts'
import type { Place } from '../../src/index.ts'

const length = (text: string) => { const read = parseQuantity(text, 'length'); if (!read.ok) throw new Error(text); return read.quantity }

describe('a place is read as the crew writes it', () => {
  it.each<[string, Place]>([
    ['A6 + 2.3 m toward A7, left rib, 1.2 m up', { by: 'station', station: 'A6', along: length('2.3 m'), toward: 'A7', side: 'left rib', height: length('1.2 m') }],
    ['A6+4 ft 7 1/2 in -> A7; roof', { by: 'station', station: 'A6', along: length('4 ft 7 1/2 in'), toward: 'A7', side: 'back' }],
    ['2.3 m from A6 towards A7', { by: 'station', station: 'A6', along: length('2.3 m'), toward: 'A7' }],
    ['A6', { by: 'station', station: 'A6' }],
    ['A6, face', { by: 'station', station: 'A6', side: 'face' }],
    ['A6, 0.4 m down', { by: 'station', station: 'A6', height: length('-0.4 m') }],
    ['"old pin", right', { by: 'station', station: 'old pin', side: 'right rib' }],
    ['3.2 m from A6 and 4.1 m from A7, left, 1 m up', { by: 'tapes', first: { station: 'A6', distance: length('3.2 m') }, second: { station: 'A7', distance: length('4.1 m') }, turn: 'left', height: length('1 m') }],
    ['E 512.3 N 204.1 U 98', { by: 'grid', east: 512.3, north: 204.1, up: 98 }],
    ['E 1,512.3, N -204.1 ± 0.5', { by: 'grid', east: 1512.3, north: -204.1, accuracy: 0.5 }],
    ['E 10 ft N 20 ft', { by: 'grid', east: 3.048, north: 6.096, text: 'E 10 ft N 20 ft' }],
    ['41.2, -117.3', { by: 'gps', latitude: 41.2, longitude: -117.3 }],
    ['41.25, -117.3, 1650 m ± 5 m', { by: 'gps', latitude: 41.25, longitude: -117.3, elevation: 1650, accuracy: 5 }],
    ['41 30 N, 117 15 W', { by: 'gps', latitude: 41.5, longitude: -117.25, text: '41 30 N, 117 15 W' }],
    ['face of drift (45 ft beyond junction)', { by: 'words', words: 'face of drift (45 ft beyond junction)' }],
    ['6 ft south of the raise where vein widens to 2 ft', { by: 'words', words: '6 ft south of the raise where vein widens to 2 ft' }],
    ['same drift', { by: 'words', words: 'same drift' }],
    ['words: A6', { by: 'words', words: 'A6' }],
  ])('%s', (text, place) => {
    expect(readPlace(text)).toEqual({ ok: true, value: place })
    expect(checkValue(kinds['sample']!.fields['place']!, place)).toBeUndefined()
  })
  it('a bare length takes the usual unit', () => {
    expect(readPlace('A6 + 2.3 toward A7', { unit: 'ft' })).toMatchObject({ value: { along: { text: '2.3', from: 'ft' } } })
    expect(readPlace('E 10 N 20', { unit: 'ft' })).toEqual({ ok: true, value: { by: 'grid', east: 3.048, north: 6.096, text: 'E 10 ft N 20 ft' } })
  })
  it('a name with spaces is a station when the book knows it', () => {
    expect(readPlace('old pin, left', { stations: new Set(['old pin']) })).toMatchObject({ value: { by: 'station', station: 'old pin', side: 'left rib' } })
  })
  it.each(['', '   ', 'A6 + some way toward A7', 'A6 + 2 m toward A7, upstairs', 'A6 + 2 m toward A7, left, right', '91.5, 10.5', '41 70 N, 117 18 W', 'E 1 N 2 ± 0'])('refuses %j', (text) => {
    expect(readPlace(text).ok).toBe(false)
  })
})

const name = fc.stringMatching(/^[A-Z][0-9]{1,3}$|^old [a-z]{1,6}$/)
const metres = fc.double({ min: 0.01, max: 500, noNaN: true }).map(size => length(`${size.toFixed(3)} m`))
const optional = <T>(arbitrary: fc.Arbitrary<T>, key: string) => fc.option(arbitrary).map(value => value === null ? {} : { [key]: value })
const merge = (...parts: readonly fc.Arbitrary<object>[]) => fc.tuple(...parts).map(all => Object.assign({}, ...all) as Place)
const coordinate = fc.double({ min: -1e6, max: 1e6, noNaN: true }).map(size => size + 0)
const accuracy = optional(fc.double({ min: 0.001, max: 100, noNaN: true }), 'accuracy')
const place: fc.Arbitrary<Place> = fc.oneof(
  fc.tuple(name, name).filter(([a, b]) => a !== b).chain(([station, toward]) => merge(fc.constant({ by: 'station', station }), optional(fc.constant(toward), 'toward'),
    optional(metres, 'along'), optional(fc.constantFrom(...sides), 'side'), optional(metres, 'height'))),
  fc.tuple(name, metres, name, metres).chain(([a, da, b, db]) => merge(fc.constant({ by: 'tapes', first: { station: a, distance: da }, second: { station: b, distance: db } }),
    optional(fc.constantFrom('left', 'right'), 'turn'), optional(metres, 'height'))),
  merge(fc.constant({ by: 'grid' }), coordinate.map(east => ({ east })), coordinate.map(north => ({ north })), optional(coordinate, 'up'), accuracy),
  merge(fc.constant({ by: 'gps' }), fc.double({ min: -90, max: 90, noNaN: true }).map(n => ({ latitude: n + 0 })),
    fc.double({ min: -180, max: 180, noNaN: true }).map(n => ({ longitude: n + 0 })), optional(coordinate, 'elevation'), accuracy),
  fc.string({ minLength: 1 }).map((words): Place => ({ by: 'words', words })).filter(it => checkValue(kinds['sample']!.fields['place']!, it) === undefined),
)

it('every place reads back from its own text', () => {
  fc.assert(fc.property(place, (original) => {
    expect(readPlace(placeText(original))).toEqual({ ok: true, value: original })
  }), { seed: 20260503, numRuns: 1000 })
})
