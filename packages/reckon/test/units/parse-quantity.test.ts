import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { baseUnit, convertWithin, format, parseQuantity, unitSymbols, type Dimension, type Mark } from '../../src/units/index.ts'

const value = (text: string, dimension: Dimension, options = {}) => {
  const parsed = parseQuantity(text, dimension, options)
  if (!parsed.ok) throw new Error(`${text}: ${parsed.problem.why}`)
  return parsed.quantity
}
const why = (text: string, dimension: Dimension, options = {}) => {
  const parsed = parseQuantity(text, dimension, options)
  return parsed.ok ? `read as ${parsed.quantity.value ?? 'null'}` : parsed.problem.why
}

describe('lengths', () => {
  it.each([
    ['4 ft 7 1/2 in', 55.5 * 0.0254], ['4\'7½"', 1.4097], ['4\' 7-1/2"', 1.4097], ['4′ 7½″', 1.4097], ['4’ 7 ½”', 1.4097], ['4\'-7"', 1.397], ['4 ft 7', 1.397],
    ['4ft. 7in.', 1.397], ['4.63 ft', 1.411224], ['1.41 m', 1.41], ['1.41\u00a0m', 1.41], ['1m41', 1.41], ['1 m 41 cm', 1.41], ['141 cm', 1.41], ['1410mm', 1.41],
    ['½ in', 0.0127], ['1 1/4 in', 0.03175], ['7½"', 0.1905], ['5/8"', 0.015875], ['\u22123 m', -3], ['-4 ft 6 in', -1.3716], ['1,250 ft', 381], ['1 250 m', 1250],
    ['0,35 m', 0.35], ['1.250,5 m', 1250.5], ['.5 m', 0.5], ['1e-3 m', 0.001], ['2 FATHOMS', 3.6576], ['1 yd 2 ft 3 in', 1.6002],
  ])('%s', (text, metres) => expect(value(text, 'length').value).toBe(metres))

  it('keeps the text as written and says which unit was assumed', () => {
    expect(value('  4\'7½" ', 'length')).toEqual({ text: '4\'7½"', value: 1.4097, unit: 'm' })
    expect(value('20', 'length', { defaultUnit: 'inches' })).toEqual({ text: '20', value: 0.508, unit: 'm', from: 'inches' })
    expect(value('20 cm', 'length', { defaultUnit: 'inches' })).toEqual({ text: '20 cm', value: 0.2, unit: 'm' })
  })

  it.each([
    ['3,5 m', 'did you mean 3.5 or 35?'], ['1,41 m', 'did you mean 1.41 or 141?'], ['5', 'in what unit?'], ['4 ft 15 in', 'carry it over'],
    ['4.5 ft 7 in', 'not whole'], ['3-5 m', 'range'], ['3 to 5 m', 'range'], ['3 ± 1 m', 'doubt in the note'], ['1m5', 'of what?'], ['1/0 m', 'over zero'], ['1 3/2 in', 'less than one'],
    ['5 lb', 'not a unit of length'], ['NaN', 'no value'], ['Infinity', 'no number'], ['-', 'no value'], ['', 'nothing is written'], [' \u00a0 ', 'nothing is written'],
    ['1e999 m', 'too large'], ['12..5 m', 'one number'], ['4 ft 7 lb', 'not a unit'], ['tr', 'can\'t be a trace'], ['8'.repeat(101), '101 characters'], ['5 M', 'metres'],
  ])('%s is refused: %s', (text, reason) => expect(why(text, 'length')).toContain(reason))

  it('reads a decimal comma where the file or crew is said to write one', () => {
    expect(value('3,5 m', 'length', { decimal: ',' }).value).toBe(3.5)
    expect(value('1.250 m', 'length', { decimal: ',' }).value).toBe(1250)
    expect(why('12.5 m', 'length', { decimal: ',' })).toContain('decimal comma')
  })
})

describe('directions', () => {
  it.each([
    ['203', 203], ['203.5°', 203.5], ['N 23 E', 23], ['S 23.5° E', 156.5], ['N', 0], ['e', 90], ['SSW', 202.5], ['due west', 270], ['north', 0], ['360', 0], ['N 0 W', 0],
    ['S 90 W', 270], ['126-55-17', 126 + 55 / 60 + 17 / 3600], ['126 55 17', 126 + 55 / 60 + 17 / 3600], ['126°55\'17"', 126 + 55 / 60 + 17 / 3600], ['126-30', 126.5],
    ['126° 30.6\'', 126.51], ['23½', 23.5], ['N 23 1/2 E', 23.5], ['50 gon', 45],
    // V: bearings of Mahun, Open Access Surveying, Fig. E-6
    ['S68-05-35W', 180 + 68 + 5 / 60 + 35 / 3600], ['N19 46 00 W', 360 - 19 - 46 / 60], ['N45-55-20E', 45 + 55 / 60 + 20 / 3600], ['S54-59-15E', 180 - 54 - 59 / 60 - 15 / 3600],
  ])('azimuth %s', (text, degrees) => expect(value(text, 'azimuth').value).toBeCloseTo(degrees, 12))

  it.each([
    ['-12', -12], ['-12°', -12], ['\u22127.5', -7.5], ['12° down', -12], ['down 12', -12], ['12 d', -12], ['up 5', 5], ['5 UP', 5], ['+5', 5], ['level', 0], ['-12-30', -12.5], ['90', 90], ['-90', -90],
  ])('inclination %s', (text, degrees) => expect(value(text, 'inclination').value).toBe(degrees))

  it.each([
    ['370', '0 to 360'], ['-12', '0 to 360'], ['N 95 E', '0 to 90'], ['126-75', 'minutes stop at 59'], ['126-30-60', 'seconds stop at 59'], ['203 T', 'which north'], ['E23N', 'N 23 E'],
    ['NaN', 'no value'], ['126.55.17', 'one number'], ['<20', 'no upper or lower limit'], ['nil', 'not a direction'], ['', 'nothing'], ['N 1000000 E', '0 to 90'], ['400 gon 3', 'unit'],
  ])('azimuth %s is refused: %s', (text, reason) => expect(why(text, 'azimuth')).toContain(reason))

  it.each([['95', '-90'], ['-91', '-90'], ['-12 down', 'two ways'], ['5 %', 'slope'], ['vertical', 'up or down'], ['N', 'no angle']])(
    'inclination %s is refused: %s', (text, reason) => expect(why(text, 'inclination')).toContain(reason))

  it('takes a heading in gon for bare numbers only', () => {
    expect(value('50', 'azimuth', { defaultUnit: 'gon' })).toMatchObject({ value: 45, from: 'gon' })
    expect(value('N 23 E', 'azimuth', { defaultUnit: 'gon' })).toEqual({ text: 'N 23 E', value: 23, unit: 'deg' })
  })
})

describe('grades, masses and shares', () => {
  it.each([
    ['0.35 oz/t', 12], ['0.35 oz/ton', 12], ['.35 opt', 12], ['0.35 oz. per ton', 12], ['7 dwt/ton', 12], ['49 oz/long ton', 1500], ['12 g/t', 12], ['12 gpt', 12], ['34 ppb', 0.034], ['0.0044 %', 44],
    ['5 oz/tonne', 155.517384], ['1 oz 10 dwt per long ton', 1.5 * 1500 / 49], ['0 g/t', 0],
  ])('grade %s', (text, grade) => expect(value(text, 'grade').value).toBeCloseTo(grade, 12))

  it.each<[string, number | null, Mark]>([
    ['tr', null, 'trace'], ['Trace', null, 'trace'], ['<0.005 g/t', 0.005, 'below'], ['< 0.005 g/t', 0.005, 'below'], ['less than 5 ppb', 0.005, 'below'], ['>100 g/t', 100, 'above'],
    ['nil', 0, 'nil'], ['~2 g/t', 2, 'about'], ['about 2 g/t', 2, 'about'], ['2 g/t?', 2, 'about'],
  ])('grade %s', (text, grade, mark) => expect(value(text, 'grade')).toEqual({ text, value: grade, unit: 'g/t', mark }))

  it('reads a column of limits and bare numbers under its heading\'s unit', () => {
    expect(value('<0.005', 'grade', { defaultUnit: 'oz/short ton' })).toMatchObject({ value: 0.005 * 240 / 7, mark: 'below', from: 'oz/short ton' })
    expect(value('12 dwt', 'grade', { defaultUnit: 'dwt/short ton' }).value).toBe(144 / 7)
  })

  it('reads a mill return: 29 oz 15 dwt 8 gr', () => {
    // V: Downey 1928, Swastika: 29.7667 oz decimal
    expect(value('29 oz 15 dwt 8 gr', 'mass').value).toBeCloseTo((29 + 15 / 20 + 8 / 480) * 31.1034768, 10)
  })

  it.each<[string, Dimension, number]>([
    ['12 dwt', 'mass', 18.66208608], ['2 lb 4 oz', 'mass', 1020.5828325], ['5 grains', 'mass', 0.32399455], ['2.4kg', 'mass', 2400], ['20.9', 'percent', 20.9], ['2000 ppm', 'percent', 0.2],
    ['25 ppm', 'concentration', 25], ['0.5 %', 'concentration', 5000], ['4 pCi/L', 'radon', 148], ['8:30', 'duration', 8.5], ['8h30', 'duration', 8.5], ['90 min', 'duration', 1.5],
    ['54 °F', 'temperature', 110 / 9], ['60 ft/min', 'speed', 0.3048], ['2 cu. ft', 'volume', 0.056633693184], ['3 m³', 'volume', 3], ['165 lb/ft³', 'density', 2.643046456703423],
    ['5 sq ft', 'area', 0.4645152],
  ])('%s of %s', (text, dimension, base) => expect(value(text, dimension).value).toBeCloseTo(base, 12))

  it.each<[string, Dimension, string]>([
    ['4 oz', 'mass', 'troy'], ['12 gr', 'mass', 'grain'], ['12 T', 'mass', '2000 lb'], ['0.2 oz', 'grade', 'in what?'], ['5 g/ton', 'grade', '1000 kg'], ['-0.005 g/t', 'grade', 'did you mean <0.005 g/t?'],
    ['ND', 'grade', 'below what limit?'], ['n/a', 'grade', 'no value'], ['-1 g', 'mass', 'not below zero'], ['<-1 g', 'mass', 'not below zero'], ['2000000 g/t', 'grade', 'more than the whole'],
    ['12', 'temperature', 'in what unit?'], ['-300 C', 'temperature', '-273.15'], ['0.3 WL', 'radon', 'Bq/m3'], ['1 day', 'duration', 'hours'], ['5 oz 25 dwt per ton', 'grade', 'carry it over'],
  ])('%s of %s is refused: %s', (text, dimension, reason) => expect(why(text, dimension)).toContain(reason))

  it('lets the column settle a spelling that has two readings', () => {
    expect(value('4 oz', 'mass', { defaultUnit: 'ozt' }).value).toBe(124.4139072)
    expect(value('4 oz', 'mass', { defaultUnit: 'oz av' }).value).toBe(113.3980925)
  })

  it('never throws for a heading that is no unit', () => expect(why('4', 'length', { defaultUnit: 'cubit' })).toContain('cubit'))
})

describe('whatever is written', () => {
  const dimensions = Object.keys(baseUnit) as Dimension[]
  const scraps = fc.constantFrom('4', '7', '1/2', '½', '\'', '"', ' ft ', ' in', 'm', 'oz', '/t', '-', '−', '.', ',', '<', '~', 'N', 'W', '°', ' ', '\u00a0', '1e999', '0', 'tr', '%', 'per', '(', '?', '1,250', '💥')
  const text = fc.oneof(fc.string({ unit: 'binary', maxLength: 40 }), fc.array(scraps, { maxLength: 8 }).map(parts => parts.join('')))

  it('parsing never throws, and a value it lets through is finite and within its dimension', () => {
    fc.assert(fc.property(text, fc.constantFrom(...dimensions), fc.option(fc.constantFrom('ft', 'g/t', 'oz', 'nonsense', '')), (written, dimension, unit) => {
      const parsed = parseQuantity(written, dimension, unit === null ? {} : { defaultUnit: unit })
      if (!parsed.ok) {
        expect(parsed.problem.why).not.toBe('')
        return
      }
      const { value, mark } = parsed.quantity
      expect(value === null ? mark === 'trace' : Number.isFinite(value)).toBe(true)
      if (dimension === 'azimuth') expect(value).toSatisfy(a => a as number >= 0 && a as number < 360)
      if (dimension === 'inclination') expect(Math.abs(value ?? NaN)).toBeLessThanOrEqual(90)
    }), { seed: 31, numRuns: 5000 })
  })

  it('what format writes, parsing reads back to within what format rounded away', () => {
    const pairs = fc.constantFrom(...dimensions).chain(dimension => fc.record({
      dimension: fc.constant(dimension), unit: fc.constantFrom(...unitSymbols(dimension)), digits: fc.integer({ min: 3, max: 6 }),
      size: fc.double({ min: dimension === 'angle' || dimension === 'length' ? -80 : 0.001, max: 80, noNaN: true }) }))
    fc.assert(fc.property(pairs, ({ dimension, unit, digits, size }) => {
      fc.pre(!unit.includes('3/') || size > 0)
      const base = convertWithin(size, unit, baseUnit[dimension], dimension)
      fc.pre(!(dimension === 'azimuth' && base >= 360) && !(dimension === 'inclination' && Math.abs(base) > 90) && !(dimension === 'grade' && base > 1e6))
      const parsed = parseQuantity(format(base, dimension, { unit, digits }), dimension)
      if (!parsed.ok) throw new Error(`${format(base, dimension, { unit, digits })}: ${parsed.problem.why}`)
      const again = convertWithin(parsed.quantity.value ?? NaN, baseUnit[dimension], unit, dimension)
      expect(Math.abs(again - size)).toBeLessThanOrEqual(Math.max(Math.abs(size) * 10 ** -(digits - 1), 0.5 * 10 ** -digits) * (1 + 1e-9) + 1e-12)
    }), { seed: 32, numRuns: 3000 })
  })

  it('reads a hundred kilobytes no slower for being long: it is refused by its length', () => {
    expect(why('1 '.repeat(50_000), 'length')).toContain('characters')
  })
})
