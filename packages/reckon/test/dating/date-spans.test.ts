import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from '../../src/core/index.ts'
import { dateSpans, fewestVisits, type DateSpan } from '../../src/dating/index.ts'

describe('aoristic sum against Palmisano et al. 2017 (V, as tested by an R package)', () => {
  // The four spans are rebuilt from the printed counts and sums, which only these satisfy with ends on the steps.
  const items = [{ from: -2200, to: -1400 }, { from: -2000, to: -1600 }, { from: -2000, to: -1400 }, { from: -1600, to: -1400 }]
  const found = dateSpans(items, { start: -2200, width: 200, count: 4 })

  it('counts 1 3 3 3', () => expect(found.counts).toEqual([1, 3, 3, 3]))
  // The printed snapshot 0.24999829, 1.08333999, 1.08332516, 1.58333657 carries calendar rounding in its fifth place.
  it.each([[0, 0.24999829], [1, 1.08333999], [2, 1.08332516], [3, 1.58333657]])('sum of step %i is %f to four places', (step, printed) => expect(found.sums[step]).toBeCloseTo(printed, 4))
  it('is 1/4, 13/12, 13/12, 19/12 exactly and four in all', () => {
    for (const [i, exact] of [1 / 4, 13 / 12, 13 / 12, 19 / 12].entries()) expect(found.sums[i]).toBeCloseTo(exact, 14)
    expect(found.outside).toBe(0)
  })
})

describe('date spans', () => {
  const year = fc.integer({ min: 1800, max: 1990 })
  const span = fc.record({ from: year, length: fc.integer({ min: 0, max: 60 }), weight: fc.integer({ min: 0, max: 9 }) })
    .map(({ from, length, weight }) => ({ from, to: from + length, weight }))
  const spans = fc.array(span, { minLength: 1, maxLength: 25 })

  it('loses no weight: steps and outside together are the whole', () => {
    fc.assert(fc.property(spans, fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 30 }), (items, width, count) => {
      const { sums, outside } = dateSpans(items, { start: 1810, width, count })
      expect(sums.reduce((a, b) => a + b, outside)).toBeCloseTo(items.reduce((sum, { weight }) => sum + weight, 0), 9)
    }), { seed: 81, numRuns: 400 })
  })

  it('moves with its years', () => {
    fc.assert(fc.property(spans, fc.integer({ min: -500, max: 500 }), (items, shift) => {
      const here = dateSpans(items, { start: 1800, width: 16, count: 12 })
      const there = dateSpans(items.map(item => ({ ...item, from: item.from + shift, to: item.to + shift })), { start: 1800 + shift, width: 16, count: 12 })
      expect(there).toEqual({ ...here, notBefore: here.notBefore + shift,
        visits: here.visits.map(({ from, to, items }) => ({ from: from + shift, to: (to ?? NaN) + shift, items })) })
    }), { seed: 82, numRuns: 200 })
  })

  it('does not depend on the order things were picked up in', () => {
    fc.assert(fc.property(spans, (items) => {
      const [here, back] = [items, items.toReversed()].map(list => dateSpans(list, { start: 1800, width: 10, count: 25 }))
      expect(back?.counts).toEqual(here?.counts)
      expect(back?.notBefore).toBe(here?.notBefore)
      expect(back?.visits.map(({ from, to }) => [from, to])).toEqual(here?.visits.map(({ from, to }) => [from, to]))
    }), { seed: 83, numRuns: 200 })
  })

  it('visits: each holds what it lists, all are listed once, and as many spans stand apart as there are visits', () => {
    fc.assert(fc.property(spans, (items) => {
      const visits = fewestVisits(items)
      expect(visits.flatMap(visit => visit.items).sort((a, b) => a - b)).toEqual(items.map((_, i) => i))
      for (const visit of visits) {
        expect(visit.from).toBeLessThanOrEqual(visit.to ?? Infinity)
        for (const i of visit.items) expect(items[i]!.from <= visit.from && items[i]!.to >= (visit.to ?? Infinity)).toBe(true)
      }
      // One span with each visit's last year: no two of them meet, so no fewer visits could do.
      const apart = visits.map(visit => visit.items.map(i => items[i]!).find(({ to }) => to === visit.to)!)
      for (const [i, later] of apart.entries()) if (i > 0) expect(later.from).toBeGreaterThan(apart[i - 1]!.to)
    }), { seed: 84, numRuns: 400 })
  })

  it('two times of work show as two visits, and the latest first year as not before', () => {
    const items: DateSpan[] = [{ from: 1882, to: 1895 }, { from: 1890, to: 1908 }, { from: 1931, to: 1942 }, { from: 1935 }]
    expect(dateSpans(items, { start: 1880, width: 10, count: 7 })).toMatchObject({ notBefore: 1935,
      visits: [{ from: 1890, to: 1895, items: [0, 1] }, { from: 1935, to: 1942, items: [2, 3] }], counts: [1, 2, 1, 0, 0, 2, 2] })
  })

  it('a coin of one year lies wholly in the step that holds it; an open span counts but is not spread', () => {
    expect(dateSpans([{ from: 1890, to: 1890 }], { start: 1880, width: 10, count: 2 })).toMatchObject({ counts: [0, 1], sums: [0, 1], outside: 0 })
    expect(dateSpans([{ from: 1885 }], { start: 1880, width: 10, count: 2 })).toMatchObject({
      counts: [1, 1], sums: [0, 0], outside: 0, visits: [{ from: 1885, to: null, items: [0] }],
    })
  })

  it.each<[string, DateSpan[], RegExp]>([
    ['nothing', [], /items/], ['a span that ends before it begins', [{ from: 1900, to: 1899 }], /items\[0\]\.to/], ['NaN', [{ from: NaN }], /items\[0\]\.from/],
    ['a negative weight', [{ from: 1900, to: 1901, weight: -1 }], /weight/],
  ])('refuses %s', (_, items, field) => {
    expect(() => dateSpans(items, { start: 1880, width: 10, count: 2 })).toThrow(InputError)
    expect(() => dateSpans(items, { start: 1880, width: 10, count: 2 })).toThrow(field)
  })

  it.each([[{ start: 1880, width: 0, count: 2 }, /width/], [{ start: 1880, width: 1, count: 1.5 }, /count/], [{ start: NaN, width: 1, count: 1 }, /start/], [{ start: 0, width: 1, count: 1e9 }, /count/]])(
    'refuses steps %j', (bins, field) => expect(() => dateSpans([{ from: 1880, to: 1890 }], bins)).toThrow(field))
})
