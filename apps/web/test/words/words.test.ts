import fc from 'fast-check'
import { expect, it } from 'vitest'
import { crewText, moneyText } from '../../src/words/crew-value.ts'
import { localMoment } from '../../src/words/moment.ts'
import { azimuthText, counted, decimal, figures, outOf, plain, toStep, withUnit } from '../../src/words/number.ts'

it('figures are as many as asked for, with no powers of ten', () => {
  expect([0.04393, 12.36, 1234.4, 98765, 0, -3.14159].map(v => figures(v))).toEqual(['0.0439', '12.4', '1,230', '98,800', '0', '−3.14'])
  expect(figures(Number.NaN)).toBe('not known')
  fc.assert(fc.property(fc.double({ min: 1e-6, max: 1e9, noNaN: true }), (v) => {
    expect(Number(figures(v, 4).replaceAll(',', '')) / v).toBeCloseTo(1, 2)
  }))
})

it('a figure taken as given is written as by hand', () => {
  expect([plain(1.2), plain(6), plain(0.65), plain(2700), plain(1234.56)]).toEqual(['1.2', '6', '0.65', '2,700', '1,235'])
})

it('a number is printed no finer than its step', () => {
  expect([toStep(149.3, 10), toStep(2.47, 0.1), toStep(805, 1), toStep(-0.04, 0.1), toStep(1364.2, 100)]).toEqual(['150', '2.5', '805', '0.0', '1,400'])
})

it('money is whole, or to its step, with its sign before it', () => {
  expect([moneyText(20.4, 'USD'), moneyText(-28.3, 'USD', 10), moneyText(-0.034, 'USD'), moneyText(1250, 'CAD')]).toEqual(['$20', '−$30', '$0', 'CAD 1,250'])
})

it('a crew that speaks feet and ounces a ton is answered so', () => {
  // 1 ozt/short ton = 240/7 g/t, exact by definition of the troy ounce and the short ton.
  expect(crewText(240 / 7, 'g/t', 'feet and oz/ton')).toBe('1.00\u00a0oz/ton')
  expect(crewText(0.3048, 'm', 'feet and oz/ton')).toBe('1.00\u00a0ft')
  expect(crewText(12.34, 'g/t', 'metres and g/t')).toBe('12.3\u00a0g/t')
  expect(crewText(172.6, 'USD a day', 'metres and g/t', 10)).toBe('$170 a day')
  expect(crewText(172.6, 'USD a day', 'metres and g/t', 10, true)).toBe('$170')
})

it('small words', () => {
  expect([azimuthText(7.4), azimuthText(359.7), azimuthText(-1)]).toEqual(['007°', '000°', '359°'])
  expect([counted(1, 'entry', 'entries'), counted(1200, 'entry', 'entries')]).toEqual(['1 entry', '1,200 entries'])
  expect(outOf(0.8, 10)).toBe('8\u00a0in\u00a010')
  expect(withUnit('62', 'deg')).toBe('62°')
  expect(decimal(-0.001, 1)).toBe('0.0')
})

it('a moment carries the offset of the place', () => {
  expect(localMoment(new Date(2026, 4, 3, 7, 5))).toMatch(/^2026-05-03T07:05[+-]\d\d:\d\d$/)
})
