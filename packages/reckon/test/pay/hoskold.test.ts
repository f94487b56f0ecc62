import { describe, expect, it } from 'vitest'
import { InputError } from '../../src/core/index.ts'
import { hoskoldPresentValue, hoskoldYears } from '../../src/pay/index.ts'

describe('years to redeem against Hoover 1909, table III, money put by at 4 % (V)', () => {
  const rows: [number, number[]][] = [[29, [3.9, 4.1, 4.3, 4.5, 4.7, 4.9]], [30, [3.8, 3.9, 4.1, 4.3, 4.5, 4.7]]]
  it.each(rows.flatMap(([income, years]) => years.map((printed, i) => ({ income, rate: 5 + i, printed }))))('$income % income, $rate % wanted: $printed', ({ income, rate, printed }) => {
    // One printed decimal, and 4.65 was rounded twice (30 %, 10 %).
    expect(Math.abs((hoskoldYears(income, rate, 4) ?? NaN) - printed)).toBeLessThanOrEqual(0.06)
  })
})

describe('hoskold', () => {
  // R: recomputed in checks/grade-and-pay.md section 7.3; Hoover's own table I was not readable
  it.each([[5, 1, 0.952], [5, 2, 1.851], [5, 3, 2.70], [5, 5, 4.26], [5, 10, 7.50], [5, 20, 11.96], [5, 30, 14.74], [10, 10, 5.46], [10, 20, 7.49]])(
    'income of 1 at %f %% for %f years is worth %f now', (rate, years, value) => expect(Math.abs(hoskoldPresentValue(rate, 4, years) - value)).toBeLessThan(0.005))

  it('goes there and back: an income that lasts n years redeems its present value in n', () => {
    for (const years of [0.5, 1, 7, 40]) {
      for (const safe of [0, 1e-9, 4, 12]) expect(hoskoldYears(100 / hoskoldPresentValue(8, safe, years), 8, safe)).toBeCloseTo(years, 6)
    }
  })

  it('equals ordinary present value when both rates are one', () => {
    expect(hoskoldPresentValue(6, 6, 10)).toBeCloseTo((1 - 1.06 ** -10) / 0.06, 12)
  })

  it('never redeems when the income does not exceed the return', () => {
    expect(hoskoldYears(5, 5, 4)).toBeNull()
    expect(hoskoldYears(4, 5, 4)).toBeNull()
  })

  it('refuses numbers that make no sense', () => {
    expect(() => hoskoldYears(NaN, 5, 4)).toThrow(InputError)
    expect(() => hoskoldYears(0, 5, 4)).toThrow(/income_pct/)
    expect(() => hoskoldYears(20, -1, 4)).toThrow(/rate_pct/)
    expect(() => hoskoldPresentValue(5, 4, 0)).toThrow(/years/)
  })
})
