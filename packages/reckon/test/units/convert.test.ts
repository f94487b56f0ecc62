import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from '../../src/core/index.ts'
import { baseUnit, convert, unitSymbols, type Dimension } from '../../src/units/index.ts'

describe('convert against published factors', () => {
  // V: checks/grade-and-pay.md section 1 (troy ounce: auminer.com/troy.htm; the rest follow exactly from 480 gr/ozt and 7000 gr/lb)
  it.each([
    [1, 'ozt', 'g', 31.1034768],
    [1, 'dwt', 'g', 1.55517384],
    [1, 'grain', 'mg', 64.79891],
    [1, 'ozt/short ton', 'g/t', 240 / 7],
    [1, 'ozt/long ton', 'g/t', 1500 / 49],
    [1, 'dwt/short ton', 'g/t', 12 / 7],
    [1, 'dwt/long ton', 'g/t', 75 / 49],
    [1, 'grain/short ton', 'g/t', 1 / 14],
    [1, 'g/t', 'ppb', 1000],
    [1, 'ppm', 'g/t', 1],
    [20, 'dwt', 'ozt', 1],
    [12, 'oz/t', 'ozt/short ton', 12],
    // V: Beringer, A Text-Book of Assaying, p. 23: the long assay ton of 32.6667 g, 32,666.6 oz to the long ton
    [1, 'long ton', 'ozt', 32666 + 2 / 3],
    // V: 2 % = 20,000 ppm; 1,500 ppm = 0.15 % (mine gases page cited in checks/physical.md section 3.1)
    [2, '%', 'ppm', 20000],
    [1500, 'ppm', '%', 0.15],
    // V: 200 cfm is 5.66 m3/min, 94 L/s: 8 CCR 8437 as read for checks/physical.md section 3.1 (5.66 is rounded)
    [200, 'ft3', 'm3', 5.663369318399999],
    // M: definitions of 1959 and of NIST Handbook 44
    [1, 'ft', 'm', 0.3048], [12, 'in', 'ft', 1], [1, 'lb', 'g', 453.59237], [1, 'short ton', 'lb', 2000], [1, 'long ton', 'lb', 2240],
    [1, 'yd3', 'ft3', 27], [1, 'US survey ft', 'm', 1200 / 3937], [1, 'fathom', 'ft', 6], [1, 'chain', 'ft', 66], [1, 'acre', 'ft2', 43560],
    [32, '°F', '°C', 0], [212, 'F', 'C', 100], [-40, 'F', 'C', -40], [0, 'C', 'K', 273.15],
    [100, 'gradians', 'degrees', 90], [90, 'arcmin', 'deg', 1.5], [Math.PI, 'rad', 'deg', 180],
    [60, 'ft/min', 'm/s', 0.3048], [36, 'km/h', 'm/s', 10], [1, 'hPa', 'Pa', 100],
    // M: NIST SP 811 appendix B: conventional columns
    [760, 'mmHg', 'Pa', 101325.0144354], [29.921, 'inHg', 'hPa', 29.921 * 25.4 * 1.33322387415], [1, 'in w.g.', 'Pa', 249.08891],
    [12, 'ft3/ton', 't/m3', 0.90718474 / (12 * 0.028316846592)],
  ])('%f %s is so many %s', (value, from, to, expected) => {
    expect(Math.abs(convert(value, from, to) - expected)).toBeLessThanOrEqual(2e-15 * Math.abs(expected))
  })

  it('agrees with a mine table: 1 lbf min2/ft4 weighs as 1.8554e6 kg/m3 of friction factor', () => {
    // V: Prosser & Wallace 1999: 25.1e-10 lbf min2/ft4 = 0.00466 kg/m3. Built from our factors: lbf = lb x 9.80665; ft; min
    const pound = convert(1, 'lb', 'kg') * 9.80665
    const factor = pound * 3600 / convert(1, 'ft', 'm') ** 4
    expect(factor / 1.8554e6).toBeCloseTo(1, 4)
  })
})

describe('convert keeps to its contract', () => {
  it('rounds once: 141 cm is 1.41 m and 4.63 ft is 1.411224 m to the last bit', () => {
    expect(convert(141, 'cm', 'm')).toBe(1.41)
    expect(convert(4.63, 'ft', 'm')).toBe(1.411224)
    expect(convert(0.1, 'm', 'mm')).toBe(100)
  })

  it('refuses what is not of one dimension, unknown, two-faced, or not finite', () => {
    expect(() => convert(1, 'm', 'kg')).toThrow(InputError)
    expect(() => convert(1, 'm', 'cubit')).toThrow(/to: "cubit"/)
    expect(() => convert(1, 'oz', 'g')).toThrow(/troy/)
    expect(() => convert(1, 'g/ton', 'g/t')).toThrow(/1000 kg/)
    expect(() => convert(1, '\'', '"')).toThrow(/one way only/)
    for (const bad of [NaN, Infinity, -Infinity]) expect(() => convert(bad, 'm', 'ft')).toThrow(InputError)
    expect(() => convert(1e308, 'km', 'mm')).toThrow(/too large/)
    expect(() => convert(0, 'ft3/ton', 't/m3')).toThrow(/other than zero/)
  })

  const dimensions = Object.keys(baseUnit) as Dimension[]
  const anyPair = fc.constantFrom(...dimensions).chain(dimension =>
    fc.tuple(fc.constantFrom(...unitSymbols(dimension)), fc.constantFrom(...unitSymbols(dimension))))

  it('goes there and back to within 4 units in the last place of the larger of value and zero shift', () => {
    fc.assert(fc.property(anyPair, fc.double({ min: 1e-9, max: 1e9, noNaN: true }), ([from, to], value) => {
      const there = convert(value, from, to)
      const shift = /^[CFK]$/.test(from) ? 500 : 0
      expect(Math.abs(convert(there, to, from) - value)).toBeLessThanOrEqual(4 * Number.EPSILON * (value + shift))
    }), { seed: 11, numRuns: 2000 })
  })

  it('is in proportion for every unit but temperature', () => {
    fc.assert(fc.property(anyPair, fc.integer({ min: 1, max: 1000 }), ([from, to], times) => {
      fc.pre(!/^[CFK]$/.test(from) && !from.includes('3/') && !to.includes('3/'))
      expect(convert(times, from, to) / (times * convert(1, from, to))).toBeCloseTo(1, 14)
    }), { seed: 12, numRuns: 1000 })
  })

  it('knows every symbol it offers, base unit included', () => {
    for (const dimension of dimensions) {
      expect(unitSymbols(dimension)).toContain(baseUnit[dimension])
      for (const symbol of unitSymbols(dimension)) expect(Number.isFinite(convert(1, symbol, baseUnit[dimension]))).toBe(true)
    }
  })
})
