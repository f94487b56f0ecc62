import { describe, expect, it } from 'vitest'
import { parseQuantity } from '@lodebook/reckon/units'
import type { Dimension, Quantity } from '@lodebook/reckon/units'
import { checkValue, kinds } from '../../src/index.ts'
import type { FieldValue } from '../../src/index.ts'

const q = (text: string, dimension: Dimension, defaultUnit?: string): Quantity => {
  const parsed = parseQuantity(text, dimension, defaultUnit === undefined ? {} : { defaultUnit })
  if (!parsed.ok) throw new Error(parsed.problem.why)
  return parsed.quantity
}
const check = (kind: string, field: string, value: unknown) => checkValue(kinds[kind]!.fields[field]!, value, field)
const deg = (text: string, value: number): Quantity => ({ text, value, unit: 'deg' })

describe('a value is checked against its field', () => {
  it.each<[string, string, unknown, string]>([
    ['shot', 'azimuth', deg('370', 370), 'an azimuth from 0 to 360 °'],
    ['shot', 'inclination', deg('95', 95), 'an inclination from -90 to 90 °'],
    ['shot', 'distance', { text: '0 m', value: 0, unit: 'm' }, 'a length above 0 m'],
    ['shot', 'distance', { text: '0', from: 'ft', value: 0, unit: 'm' }, 'a length above 0 ft'],
    ['shot', 'distance', { text: '-3 ft', value: -0.9144, unit: 'm' }, 'a length above 0 ft'],
    ['air', 'dryBulb', { text: '190 F', value: 87.77777777777777, unit: 'C' }, 'a temperature from -76 to 158 °F'],
    ['shot', 'distance', { text: '-3 m', value: -3, unit: 'm' }, 'a length above 0 m'],
    ['sample', 'mass', { text: '-2 kg', value: -2000, unit: 'g' }, 'a mass above 0 kg'],
    ['sample', 'mass', { text: 'NaN', value: Number.NaN, unit: 'g' }, 'a number'],
    ['sample', 'mass', { text: '2 kg', value: Infinity, unit: 'g' }, 'a number'],
    ['sample', 'mass', { text: '2 kg', value: 2, unit: 'kg' }, 'one of m, m2'],
    ['shot', 'distance', { text: '2 kg', value: 2000, unit: 'g' }, 'a value kept in m'],
    ['structure', 'dip', deg('91', 91), 'an angle from 0 to 90 °'],
    ['width', 'measured', { text: '<0.1 m', value: 0.1, unit: 'm', mark: 'below' }, 'a length above 0 m, measured'],
    ['shot', 'taken', '2026-02-29', 'a date such as 2026-05-03'],
    ['air', 'taken', '2026-05-03 07:30', 'a date, time and offset'],
    ['air', 'taken', '2026-05-03T24:30Z', 'a date, time and offset'],
    ['target', 'strength', 11, 'a number from 0 to 10'],
    ['target', 'strength', Number.NaN, 'a number from 0 to 10'],
    ['pan', 'seeded', 2.5, 'a whole number'],
    ['pan', 'seeded', -1, 'a whole number'],
    ['relic', 'from', 897, 'a year from 1000 on'],
    ['sample', 'bag', ' B-1', 'one line of text'],
    ['sample', 'bag', '', 'one line of text'],
    ['sample', 'bag', 'B\n1', 'one line of text'],
    ['sample', 'bag', 'B\ud8001', 'one line of text'],
    ['sample', 'bag', 7, 'text'],
    ['sample', 'method', 'scraping', 'one of channel, chip'],
    ['ground', 'found', [], 'at least one'],
    ['ground', 'found', ['drummy', 'loud'], 'one of drummy'],
    ['ground', 'found', ['drummy', 'drummy'], 'each only once'],
    ['shot', 'from', 'A6, left', 'a station\'s name'],
    ['cost', 'amount', { text: '40', amount: -40, currency: 'USD' }, 'an amount of zero or more'],
    ['cost', 'amount', { text: '$40', amount: 41, currency: 'USD' }, '40 USD, which is what "$40" says'],
    ['cost', 'amount', { text: '$40', amount: 40, currency: 'dollars' }, 'a currency of three letters'],
    ['pan', 'colours', [{ class: 'fine', count: 3, mgEach: 0 }], 'a mass above zero'],
    ['photo', 'file', { sha256: 'abc', type: 'image/jpeg', bytes: 3 }, 'a SHA-256'],
    ['sample', 'place', { by: 'station', station: 'A6', along: { text: '-2 m', value: -2, unit: 'm' } }, 'a length of 0 m or more'],
    ['sample', 'place', { by: 'station', station: 'A6', toward: 'A6' }, 'another station than the first'],
    ['sample', 'place', { by: 'gps', latitude: 91, longitude: 0 }, 'a latitude from -90 to 90'],
    ['sample', 'place', { by: 'grid', east: 1, north: Number.NaN }, 'a number'],
    ['sample', 'place', { by: 'grid', east: 1, north: 2, depth: 3 }, 'no "depth" here'],
    ['sample', 'place', { by: 'hearsay' }, 'a place: by station, tapes, grid, GPS or words'],
    ['sample', 'place', { by: 'grid', east: 1, north: 2, text: 'E 10 ft N 2' }, 'the place that its numbers say'],
    ['shot', 'note', 'a\u0000b', 'text that can be read'],
    ['ground', 'scaled', 'yes', 'true or false'],
  ])('%s.%s refuses %j: %s', (kind, field, value, expected) => {
    const problem = check(kind, field, value)
    expect(problem?.expected).toContain(expected)
    expect(problem?.message).toContain(kinds[kind]!.fields[field]!.label)
    expect(problem?.message).toMatch(/\.$/)
    expect(problem?.message).not.toContain('\n')
    expect(problem?.warning).toBeUndefined()
  })

  it.each<[string, string, FieldValue]>([
    ['shot', 'azimuth', q('N 23 E', 'azimuth')],
    ['shot', 'azimuth', q('0', 'azimuth')],
    ['shot', 'inclination', q('-90', 'inclination')],
    ['shot', 'distance', q('4 ft 7 1/2 in', 'length')],
    ['sample', 'width', q('20', 'length', 'in')],
    ['assay', 'gold', q('tr', 'grade')],
    ['assay', 'gold', q('<0.005 g/t', 'grade')],
    ['assay', 'gold', q('nil', 'grade')],
    ['air', 'taken', '2026-05-03T07:30-07:00'],
    ['shot', 'taken', '2024-02-29'],
    ['sample', 'place', { by: 'station', station: 'A6', toward: 'A7', along: q('2.3 m', 'length'), side: 'left rib', height: q('-0.2 m', 'length') }],
    ['sample', 'place', { by: 'grid', east: 3.048, north: 2, text: 'E 10 ft N 2 m' }],
    ['cost', 'amount', { text: '$1,250.50', amount: 1250.5, currency: 'USD' }],
    ['pan', 'colours', []],
    ['heading', 'stations', ['A1', 'A2', 'A3', 'A1']],
  ])('%s.%s takes %j', (kind, field, value) => {
    expect(check(kind, field, value)).toBeUndefined()
  })

  it('a stored value must be what its text says', () => {
    expect(check('shot', 'distance', { text: '4.63 ft', value: 4.63, unit: 'm' })).toMatchObject({ field: 'distance.value', value: 4.63 })
    expect(check('shot', 'distance', { text: '4.63', from: 'ft', value: 4.63 * 0.3048, unit: 'm' })).toBeUndefined()
    expect(check('shot', 'distance', { text: '4.63', value: 4.63, unit: 'm' })?.message).toContain('in what unit')
    expect(check('assay', 'gold', { text: '<0.005 g/t', value: 0.005, unit: 'g/t' })?.field).toBe('gold.value')
    expect(check('shot', 'distance', { text: 'about a pace', value: 0.8, unit: 'm' })?.field).toBe('distance')
  })

  it('tenths may stand after a comma when the crew writes so', () => {
    expect(check('shot', 'distance', { text: '3,5 m', value: 3.5, unit: 'm' })).toBeUndefined()
    expect(check('shot', 'distance', { text: '3,5 m', value: 35, unit: 'm' })).toBeDefined()
  })

  it('says one field, one value and what would do, in one sentence', () => {
    expect(check('shot', 'azimuth', deg('370', 370))).toEqual({
      field: 'azimuth', value: deg('370', 370), expected: 'an azimuth from 0 to 360 °',
      message: 'Azimuth: "370" will not do; expected an azimuth from 0 to 360 °.',
    })
  })
})
