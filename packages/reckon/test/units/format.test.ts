import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from '../../src/core/index.ts'
import { format, formatQuantity, parseQuantity } from '../../src/units/index.ts'

describe('format', () => {
  it.each([
    [1.4097, { unit: 'ft-in' }, '4 ft 7 1/2 in'], [1.397, { unit: 'ft-in' }, '4 ft 7 in'], [1.2192, { unit: 'ft-in' }, '4 ft'], [0.0159, { unit: 'ft-in', digits: 16 }, '5/8 in'],
    [0.30479, { unit: 'ft-in' }, '1 ft'], [-1.3716, { unit: 'ft-in' }, '\u22124 ft 6 in'], [0, { unit: 'ft-in' }, '0 in'], [1.4097, {}, '1.41 m'], [1.4097, { unit: 'ft' }, '4.63 ft'],
    [4484124.4, { digits: 1 }, '4,484,124.4 m'], [-0.001, {}, '0.00 m'], [1.4097, { bare: true }, '1.41'], [1.4097, { unit: 'cm' }, '141 cm'],
  ])('length %f', (metres, options, text) => expect(format(metres, 'length', options)).toBe(text))

  it('writes grades to significant figures, whole digits kept', () => {
    expect(format(0.04393 * 240 / 7, 'grade', { unit: 'oz/t' })).toBe('0.0439 oz/ton')
    expect(format(34.285714, 'grade')).toBe('34.3 g/t')
    expect(format(1234.5, 'grade')).toBe('1,230 g/t')
    expect(format(9.999, 'grade')).toBe('10.0 g/t')
    expect(format(0, 'grade')).toBe('0 g/t')
  })

  it('writes directions as a number, a quadrant bearing or degrees, minutes, seconds', () => {
    expect(format(203.46, 'azimuth')).toBe('203.5°')
    expect(format(359.99, 'azimuth')).toBe('0.0°')
    expect(format(203.46, 'azimuth', { unit: 'quadrant' })).toBe('S 23.5° W')
    expect(format(336.5, 'azimuth', { unit: 'quadrant' })).toBe('N 23.5° W')
    expect(format(359.9999, 'azimuth', { unit: 'dms' })).toBe('0-00-00')
    expect(format(248.093055, 'azimuth', { unit: 'dms' })).toBe('248-05-35')
    expect(format(-12.5, 'inclination', { unit: 'dms' })).toBe('\u221212-30-00')
    expect(format(-12.5, 'inclination')).toBe('\u221212.5°')
  })

  it('writes the mark of a quantity', () => {
    expect(formatQuantity({ value: 0.005, mark: 'below' }, 'grade')).toBe('<0.00500 g/t')
    expect(formatQuantity({ value: null, mark: 'trace' }, 'grade')).toBe('trace')
    expect(formatQuantity({ value: 0, mark: 'nil' }, 'grade')).toBe('nil')
    expect(formatQuantity({ value: 2, mark: 'about' }, 'length')).toBe('~2.00 m')
  })

  it('refuses NaN, infinity and a unit of something else', () => {
    expect(() => format(NaN, 'length')).toThrow(InputError)
    expect(() => format(Infinity, 'length')).toThrow(InputError)
    expect(() => format(1, 'length', { unit: 'kg' })).toThrow(InputError)
  })

  it.each(['ft-in', 'quadrant', 'dms'])('%s is read back to within half its smallest step', (unit) => {
    const dimension = unit === 'ft-in' ? 'length' : 'azimuth'
    const step = unit === 'ft-in' ? 0.0254 / 16 : unit === 'quadrant' ? 0.1 : 1 / 3600
    fc.assert(fc.property(fc.double({ min: unit === 'ft-in' ? -300 : 0, max: 359, noNaN: true }), (value) => {
      const parsed = parseQuantity(format(value, dimension, { unit, ...unit === 'ft-in' ? { digits: 16 } : {} }), dimension)
      if (!parsed.ok) throw new Error(parsed.problem.why)
      expect(Math.abs((parsed.quantity.value ?? NaN) - value)).toBeLessThanOrEqual(step / 2 + 1e-9)
    }), { seed: 41, numRuns: 500 })
  })
})
