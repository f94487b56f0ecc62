import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as library from 'simple-statistics'
import { DegenerateError, drawsFrom, InputError } from '../../src/core/index.ts'
import {
  integral, jeffreysRange, kruskalWallis, landLimit, lognormalMean, mannWhitney, mean, poissonRange, poissonUpper, quantile, quantiles, shapiroWilk, variance,
  weightedMean, weightedVariance, wilsonRange,
} from '../../src/statistics/index.ts'

const values = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 2, maxLength: 40 })

describe('moments and quantiles', () => {
  it('mean and variance agree with simple-statistics', () => {
    fc.assert(fc.property(values, (v) => {
      expect(Math.abs(mean(v) - library.mean(v))).toBeLessThan(1e-8)
      expect(Math.abs(variance(v) - library.sampleVariance(v))).toBeLessThanOrEqual(1e-12 * Math.max(...v.map(x => x * x)))
    }), { seed: 1 })
  })
  it('keep their digits far from zero', () => { expect(variance([1e9 + 1, 1e9 + 2, 1e9 + 3])).toBe(1) })
  it('equal weights change nothing; weights scale away; a weight of zero leaves a value out', () => {
    fc.assert(fc.property(values, fc.double({ min: 0.01, max: 100, noNaN: true }), (v, k) => {
      const w = v.map(() => k)
      expect(Math.abs(weightedMean(v, w) - mean(v))).toBeLessThan(1e-8)
      expect(Math.abs(weightedVariance(v, w) / (variance(v) || 1) - (variance(v) ? 1 : 0))).toBeLessThan(1e-9)
    }), { seed: 2 })
    expect(weightedVariance([1, 2, 3, 99], [2, 2, 2, 0])).toBeCloseTo(1, 14)
  })
  it('quantiles: R\'s type 7 gives 3.25, 5.5 and 7.75 for 1 to 10', () => {
    const ten = Object.freeze([10, 3, 1, 2, 9, 4, 8, 5, 7, 6])
    expect(quantiles(ten, [0.25, 0.5, 0.75])).toEqual([3.25, 5.5, 7.75])
    expect(quantile(ten, 0)).toBe(1)
    expect(quantile(ten, 1)).toBe(10)
    expect(ten[0]).toBe(10)
  })
  it('refuse what they can\'t take', () => {
    expect(() => mean([])).toThrow(DegenerateError)
    expect(() => variance([1])).toThrow('too few')
    expect(() => mean([1, NaN])).toThrow('values[1]')
    expect(() => weightedMean([1, 2], [0, 0])).toThrow('no weight')
    expect(() => weightedMean([1, 2], [1, -1])).toThrow('weights[1]')
    expect(() => weightedVariance([1, 2], [1, 0])).toThrow('too few')
    expect(() => quantile([1], 1.5)).toThrow('share')
  })
  it('the integral of a cosine and of a polynomial of degree 19 is exact', () => {
    expect(integral(Math.cos, 0, Math.PI / 2, 0.5)).toBeCloseTo(1, 14)
    expect(integral(x => 20 * x ** 19, 0, 1, 1)).toBeCloseTo(1, 13)
  })
})

describe('lognormal mean', () => {
  const grades = fc.array(fc.double({ min: 0.01, max: 500, noNaN: true }), { minLength: 2, maxLength: 15 })
  it('scales with the unit of the values', () => {
    fc.assert(fc.property(grades, (v) => {
      const [a, b] = [lognormalMean(v, 0.9), lognormalMean(v.map(x => x * 34.285714), 0.9)]
      expect(Math.abs(b.sichelT / a.sichelT / 34.285714 - 1)).toBeLessThan(1e-9)
      if (a.land.high < 1e100) expect(Math.abs(Math.log(b.land.high / a.land.high / 34.285714))).toBeLessThan(1e-6)
      expect(a.land.low).toBeLessThanOrEqual(a.land.high)
    }), { seed: 3, numRuns: 25 })
  })
  it('Land\'s upper limit holds the true mean 95 times in 100, and so does the lower, for five values of wide scatter', () => {
    const draws = drawsFrom(9)
    const [logSd, repeats] = [1.1, 1500]
    let [under, over] = [0, 0]
    for (let k = 0; k < repeats; k++) {
      const logs = Array.from({ length: 5 }, () => logSd * draws.normal())
      const summary = { logMean: mean(logs), logSd: Math.sqrt(variance(logs)), count: 5 }
      if (landLimit(summary, 'upper', 0.95) > Math.exp(logSd ** 2 / 2)) under++
      if (landLimit(summary, 'lower', 0.95) < Math.exp(logSd ** 2 / 2)) over++
    }
    // three standard deviations of a count of 1,500 at 95 %: 0.017
    expect(Math.abs(under / repeats - 0.95)).toBeLessThan(0.017)
    expect(Math.abs(over / repeats - 0.95)).toBeLessThan(0.017)
  })
  it('values all alike leave no doubt; two values leave a great deal', () => {
    const alike = lognormalMean([3, 3, 3], 0.95)
    expect(alike.land.high).toBeCloseTo(3, 12)
    expect(alike.sichelT).toBeCloseTo(3, 12)
    const two = lognormalMean([1, 2], 0.95)
    expect(two.land.high).toBeGreaterThan(1e10)
    expect(landLimit({ logMean: 0, logSd: 8, count: 2 }, 'upper', 0.95)).toBe(Infinity)
  })
  it('small scatter: Land tends to Student', () => {
    const v = [1, 1.001, 0.999, 1.002, 0.9985]
    const result = lognormalMean(v, 0.95)
    expect(result.land.highOneSided).toBeCloseTo(result.studentUpper, 5)
  })
  it('refuses zero, one value and a confidence of 1', () => {
    expect(() => lognormalMean([1, 0], 0.95)).toThrow('values[1]')
    expect(() => lognormalMean([1], 0.95)).toThrow('too few')
    expect(() => lognormalMean([1, 2], 1)).toThrow(InputError)
  })
})

describe('groups', () => {
  it('two groups: all splits counted by brute force, ties and all', () => {
    const [x, y] = [[1, 2, 2, 5], [2, 3, 3]]
    const all = [...x, ...y]
    const score = (chosen: readonly number[], rest: readonly number[]) =>
      chosen.reduce((sum, a) => sum + rest.reduce((s, b) => s + (a > b ? 1 : a === b ? 0.5 : 0), 0), 0)
    const scores: number[] = []
    for (let mask = 0; mask < 128; mask++) {
      const chosen = all.filter((_, i) => mask >> i & 1)
      if (chosen.length === 4) scores.push(score(chosen, all.filter((_, i) => !(mask >> i & 1))))
    }
    const result = mannWhitney(x, y)
    expect(result.W).toBe(score(x, y))
    expect(result.pGreater).toBeCloseTo(scores.filter(s => s >= result.W).length / 35, 14)
    expect(result.pLess).toBeCloseTo(scores.filter(s => s <= result.W).length / 35, 14)
  })
  it('the normal approximation for many values is near the exact chance for fewer', () => {
    const draws = drawsFrom(4)
    const x = Array.from({ length: 40 }, () => draws.normal() + 0.4)
    const y = Array.from({ length: 40 }, () => draws.normal())
    const [all, fewer] = [mannWhitney(x, y), mannWhitney(x.slice(0, 30), y.slice(0, 30))]
    expect(all.exact).toBe(false)
    expect(fewer.exact).toBe(true)
    const middle = 30 * 30 / 2
    const z = (fewer.W - 0.5 - middle) / Math.sqrt(30 * 30 * 61 / 12)
    expect(Math.abs(fewer.pGreater - (1 - library.cumulativeStdNormalProbability(z)))).toBeLessThan(0.002)
  })
  it('ranks only: any rising change of scale leaves the tests as they are', () => {
    const groups = [[1, 4, 2.5], [3, 9, 8], [0.5, 0.7]]
    expect(kruskalWallis(groups.map(g => g.map(Math.exp)))).toEqual(kruskalWallis(groups))
  })
  it('refuse empty groups and values all alike', () => {
    expect(() => kruskalWallis([[1]])).toThrow('too few')
    expect(() => kruskalWallis([[1], []])).toThrow('groups[1]')
    expect(() => kruskalWallis([[1, 1], [1]])).toThrow('all equal')
    expect(() => mannWhitney([1, 1], [1])).toThrow('all equal')
    expect(() => mannWhitney([1, Infinity], [1])).toThrow('groups[0][1]')
  })
})

describe('counts', () => {
  it('nothing seen: the upper limit is -ln(1 - confidence)', () => {
    expect(poissonUpper(0, 0.95)).toBeCloseTo(-Math.log(0.05), 10)
    expect(poissonRange(0, 0.8).low).toBe(0)
  })
  it('Garwood\'s range has the stated chances at its ends', () => {
    const { low, high } = poissonRange(4, 0.9)
    const atMost = (k: number, m: number) => {
      let [term, sum] = [Math.exp(-m), Math.exp(-m)]
      for (let i = 1; i <= k; i++) sum += term *= m / i
      return sum
    }
    expect(atMost(4, high)).toBeCloseTo(0.05, 9)
    expect(1 - atMost(3, low)).toBeCloseTo(0.05, 9)
  })
  it('Wilson and Jeffreys: within [0, 1], mirror each other, near each other', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 60 }), fc.double({ min: 0, max: 1, noNaN: true }), (tried, share) => {
      const found = Math.floor(share * tried)
      for (const range of [wilsonRange, jeffreysRange]) {
        const [a, b] = [range(found, tried, 0.9), range(tried - found, tried, 0.9)]
        expect(a.low).toBeGreaterThanOrEqual(0)
        expect(a.high).toBeLessThanOrEqual(1)
        expect(a.low).toBeCloseTo(1 - b.high, 8)
        expect(a.low).toBeLessThanOrEqual(found / tried)
        expect(a.high).toBeGreaterThanOrEqual(found / tried)
      }
    }), { seed: 5 })
    expect(() => wilsonRange(3, 2, 0.9)).toThrow('found')
    expect(() => wilsonRange(0, 0, 0.9)).toThrow('tried')
    expect(() => poissonRange(1.5, 0.9)).toThrow('count')
  })
  it('solves Wilson\'s own equation at both ends', () => {
    const { low, high } = wilsonRange(7, 20, 0.95)
    for (const p of [low, high]) expect(Math.abs(0.35 - p) / Math.sqrt(p * (1 - p) / 20)).toBeCloseTo(1.959964, 6)
  })
})

describe('Shapiro-Wilk', () => {
  it('its chance is even for normal values: about one in ten below 0.1, for small and larger samples', () => {
    const draws = drawsFrom(21)
    for (const n of [3, 4, 8, 20]) {
      let below = 0
      for (let k = 0; k < 1500; k++) if (shapiroWilk(Array.from({ length: n }, () => draws.normal())).p < 0.1) below++
      expect(below / 1500).toBeGreaterThan(0.07)
      expect(below / 1500).toBeLessThan(0.13)
    }
  })
  it('does not mind place or scale, and refuses values all alike', () => {
    const v = [1, 2, 4, 8, 16, 40]
    expect(shapiroWilk(v.map(x => 3 - 7 * x)).W).toBeCloseTo(shapiroWilk(v).W, 12)
    expect(() => shapiroWilk([2, 2, 2])).toThrow('all equal')
    expect(() => shapiroWilk([2, 3])).toThrow('too few')
  })
})
