import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from '../../src/core/index.ts'
import { netPresentValue, rateOfReturn } from '../../src/pay/index.ts'

const table = readFileSync(new URL('../../../../checks/data/hoover1909_table2_present_value.csv', import.meta.url), 'utf8')
  .trim().split('\n').slice(1).map(line => line.split(',').map(Number))
const single = (rate: number, years: number) => netPresentValue(rate, [...Array<number>(years).fill(0), 1])

describe('present value against Hoover 1909, Principles of Mining, table II (V)', () => {
  const cells = table.flatMap(([years = 0, ...printed]) => [4, 5, 6, 7].map((percent, i) => ({ years, percent, printed: printed[i] ?? NaN })))

  it('has all 160 cells', () => expect(cells).toHaveLength(160))

  // The printed table mostly cuts off after three places and rounds elsewhere: one unit in the last place.
  it.each(cells.filter(({ years, percent }) => !(years === 22 && percent === 7)))('$years years at $percent %: $printed', ({ years, percent, printed }) => {
    expect(Math.abs(single(percent / 100, years) - printed)).toBeLessThanOrEqual(0.001)
  })

  it('shows 22 years at 7 % as the misprint it is: .266 for .2257', () => {
    expect(cells.find(({ years, percent }) => years === 22 && percent === 7)?.printed).toBe(0.266)
    expect(single(0.07, 22)).toBeCloseTo(0.2257, 4)
  })

  it('$1,304,000 in two years at 7 % (printed with the factor .87 as $1,134,480) is $1,138,964 with the whole factor', () => {
    expect(netPresentValue(0.07, [0, 0, 1_304_000])).toBeCloseTo(1_138_964, 0)
  })
})

describe('present value and rate of return against the numpy-financial documentation (M)', () => {
  it('npv(8 %, -40000, 5000, 8000, 12000, 30000) = 3065.22267', () => {
    expect(netPresentValue(0.08, [-40000, 5000, 8000, 12000, 30000])).toBeCloseTo(3065.22267, 5)
  })
  it.each([[[-100, 39, 59, 55, 20], 0.28095, 5], [[-100, 0, 0, 74], -0.0955, 4]])('irr(%j) = %f', (flows, rate, digits) => {
    expect(rateOfReturn(flows).rate).toBeCloseTo(rate, digits)
    expect(rateOfReturn(flows).reason).toBeUndefined()
  })
})

describe('rate of return', () => {
  it('finds both rates where two balance, names neither as the one, and says so', () => {
    // (1 - 1.1 x)(1 - 1.2 x) = 1 - 2.3 x + 1.32 x^2: rates 10 % and 20 % by construction
    const found = rateOfReturn([-100, 230, -132])
    expect(found.rates.map(rate => rate.toFixed(12))).toEqual(['0.100000000000', '0.200000000000'])
    expect(found).toMatchObject({ rate: null, signChanges: 2 })
    expect(found.reason).toContain('2 rates')
  })

  it('says why there is none', () => {
    expect(rateOfReturn([-100, -5])).toEqual({ rate: null, rates: [], signChanges: 0, reason: 'money only goes out, so no rate balances it' })
    expect(rateOfReturn([100]).reason).toContain('comes in')
    expect(rateOfReturn([0, 0]).reason).toBe('nothing is paid')
    expect(rateOfReturn([-100, 150, -100])).toMatchObject({ rate: null, rates: [], signChanges: 2 })
  })

  it('warns where the signs turn more than once though one rate balances', () => {
    const found = rateOfReturn([-100, 250, -10, 5])
    expect(found.rate).not.toBeNull()
    expect(found.reason).toContain('3 times')
  })

  it('finds a rate that only touches: (1 - 1.1 x)^2', () => {
    expect(rateOfReturn([100, -220, 121]).rates[0]).toBeCloseTo(0.1, 6)
  })

  it('finds tiny and huge rates and those near -1', () => {
    expect(rateOfReturn([-1, 1 + 1e-10]).rate).toBeCloseTo(1e-10, 15)
    expect(rateOfReturn([-1, 1e12]).rate).toBeCloseTo(1e12 - 1, -2)
    expect(rateOfReturn([-1e9, 1]).rate).toBeCloseTo(1e-9 - 1, 15)
    expect(rateOfReturn([-1e300, 2e300]).rate).toBeCloseTo(1, 14)
  })

  it('finds every rate of flows built from known ones, whatever their scale', () => {
    const rates = fc.uniqueArray(fc.integer({ min: -80, max: 400 }), { minLength: 1, maxLength: 4, selector: n => Math.round(n / 15) })
    fc.assert(fc.property(rates, fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (percents, scale) => {
      fc.pre(percents.every(a => percents.every(b => a === b || Math.abs(a - b) >= 15)))
      const flows = percents.reduce<number[]>((poly, percent) => {
        const growth = 1 + percent / 100
        return [...poly, 0].map((c, t) => c - growth * (poly[t - 1] ?? 0))
      }, [scale])
      const found = rateOfReturn(flows).rates
      expect(found).toHaveLength(percents.length)
      for (const [i, percent] of percents.toSorted((a, b) => a - b).entries()) expect(found[i]).toBeCloseTo(percent / 100, 8)
    }), { seed: 61, numRuns: 400 })
  })

  it('is worth nothing at its own rate, for thirty years of months', () => {
    const flows = [-100_000, ...Array.from({ length: 360 }, (_, month) => 700 + month % 7 * 30)]
    const { rate } = rateOfReturn(Object.freeze(flows))
    expect(Math.abs(netPresentValue(rate ?? NaN, flows))).toBeLessThan(1e-6)
  })

  it('refuses what it can\'t use, naming the flow', () => {
    expect(() => rateOfReturn([])).toThrow(InputError)
    expect(() => rateOfReturn([1, NaN])).toThrow(/flows\[1\]/)
    expect(() => netPresentValue(-1, [1])).toThrow(/rate/)
    expect(() => netPresentValue(NaN, [1])).toThrow(/rate/)
    expect(() => netPresentValue(0.1, [])).toThrow(/flows/)
  })
})
