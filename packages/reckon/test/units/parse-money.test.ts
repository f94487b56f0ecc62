import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { azimuthFrom, parseMoney, parseNumber } from '../../src/units/index.ts'
import { InputError } from '../../src/core/index.ts'

const read = (text: string, currency = 'USD') => {
  const parsed = parseMoney(text, currency)
  return parsed.ok ? [parsed.money.amount, parsed.money.currency] : parsed.problem.why
}

describe('money', () => {
  it.each([
    ['$1,250.50', 1250.5, 'USD'], ['1250.5', 1250.5, 'USD'], ['40 EUR', 40, 'EUR'], ['EUR 40', 40, 'EUR'], ['US$40', 40, 'USD'], ['C$ 12', 12, 'CAD'], ['-$5', -5, 'USD'], ['$-5', -5, 'USD'],
    ['(5.00)', -5, 'USD'], ['1.250,50 €', 1250.5, 'EUR'], ['£ 3', 3, 'GBP'],
  ])('%s', (text, amount, currency) => expect(read(text)).toEqual([amount, currency]))

  it('takes a plain dollar as the book\'s own, and asks where the book has none', () => {
    expect(read('$5', 'NZD')).toEqual([5, 'NZD'])
    expect(read('$5', 'EUR')).toContain('whose $?')
    expect(read('5', '')).toContain('in what currency?')
  })

  it.each([['3,5', 'did you mean 3.5 or 35?'], ['$', 'no amount'], ['', 'nothing'], ['-(5)', 'not clear'], ['--5', 'two signs'], ['$1.2k', 'not clear'], ['NaN', 'no amount'], ['5 pesos', 'not a currency'], ['1'.repeat(61), 'too long']])(
    '%s is refused: %s', (text, reason) => expect(read(text)).toContain(reason))

  it('never throws and never lets a number through that is not finite', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 70 }), (text) => {
      const parsed = parseMoney(text, 'USD')
      expect(parsed.ok ? Number.isFinite(parsed.money.amount) : parsed.problem.why !== '').toBe(true)
    }), { seed: 51, numRuns: 2000 })
  })
})

describe('bare numbers', () => {
  it.each([['1,250.5', 1250.5], ['7 1/2', 7.5], ['−3', -3], ['½', 0.5], ['1e3', 1000], ['0,35', 0.35]])('%s', (text, number) => expect(parseNumber(text)).toEqual({ ok: true, value: number }))
  it.each(['', 'NaN', 'Infinity', '1e999', '3,5', '1 2', 'twelve', '12 m'])('%s is refused', text => expect(parseNumber(text)).toMatchObject({ ok: false, problem: { value: text } }))
})

describe('an azimuth given as a number or as text', () => {
  it('reads both and names the field of a bad one', () => {
    expect(azimuthFrom(203.25, 'legs[0].azimuth')).toBe(203.25)
    expect(azimuthFrom('S68-05-35W', 'legs[0].azimuth')).toBeCloseTo(248.0930556, 6)
    expect(azimuthFrom(1e-7, 'a')).toBe(1e-7)
    expect(() => azimuthFrom(370, 'legs[3].azimuth')).toThrow(InputError)
    expect(() => azimuthFrom(370, 'legs[3].azimuth')).toThrow(/legs\[3\]\.azimuth/)
    expect(() => azimuthFrom(NaN, 'a')).toThrow(InputError)
  })
})
