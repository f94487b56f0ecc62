import { DegenerateError, InputError } from '@lodebook/reckon'
import { groupShift, holm, mannWhitney, rankCorrelation } from '@lodebook/reckon/statistics'
import type { WithinLimits } from '@lodebook/reckon/statistics'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

const known = (values: readonly number[]): readonly WithinLimits[] => values.map(v => [v, v] as const)
const below = (limit: number): WithinLimits => [-Infinity, limit]

const few = fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 2, maxLength: 12 })
const some = fc.array(fc.double({ min: 0, max: 9, noNaN: true }), { minLength: 4, maxLength: 10 })
const x = [1.1, 2.2, 3.7, 4.1, 5.9, 0.4, 7.7], y = [0.5, 1.3, 2.1, 2.9, 0.1, 3.3]

describe('by how much one group runs above another', () => {
  // R 4.2.2, stats: wilcox.test(x, y, conf.int = TRUE, conf.level = ...), status V (output read)
  it.each([[0.8, 0.1, 3.6], [0.9, -0.7, 4.4], [0.95, -1, 4.8]])('[GS1] agrees with R at %d', (confidence, low, high) => {
    const found = groupShift(known(x), known(y), confidence)
    expect(found.shift).toBeCloseTo(1.65, 12)
    expect([found.low, found.high]).toEqual([expect.closeTo(low, 12), expect.closeTo(high, 12)])
    expect(found.p).toBeCloseTo(0.180652680652681, 12)
  })

  it('[GS2] without limits its chance is that of the rank-sum test, ties and all', () => {
    fc.assert(fc.property(few, few, (a, b) => {
      if (new Set([...a, ...b]).size === 1) return
      expect(groupShift(known(a), known(b), 0.8).p).toBeCloseTo(mannWhitney(a, b).p, 12)
    }), { numRuns: 60, seed: 11 })
  })

  it('[GS3] values under a limit never make the interval narrower than knowing them would', () => {
    fc.assert(fc.property(some, some, (a, b) => {
      const cover = (v: number): WithinLimits => v < 3 ? below(3) : [v, v]
      if ([...a, ...b].every(v => v < 3) || new Set([...a, ...b]).size < a.length + b.length) return
      let limited
      try { limited = groupShift(a.map(cover), b.map(cover), 0.8) } catch (error) { expect(error).toBeInstanceOf(DegenerateError); return }
      const full = groupShift(known(a), known(b), 0.8)
      expect(limited.low).toBeLessThanOrEqual(full.low)
      expect(limited.high).toBeGreaterThanOrEqual(full.high)
    }), { numRuns: 100, seed: 12 })
  })

  it('[GS4] is turned about when the groups change places, and moves with the values', () => {
    const one = groupShift(known(x), known(y), 0.8), back = groupShift(known(y), known(x), 0.8), moved = groupShift(known(x.map(v => v + 2)), known(y), 0.8)
    expect([back.shift, back.low, back.high]).toEqual([-one.shift!, -one.high, -one.low])
    expect(moved.shift).toBeCloseTo(one.shift! + 2, 12)
  })

  it('[GS5] by the normal law beyond sixty values, close to the exact one', () => {
    const many = Array.from({ length: 32 }, (_, i) => 1 + 2.5 * i), others = Array.from({ length: 31 }, (_, i) => 0.3 + 2.3 * i)
    const found = groupShift(known(many), known(others), 0.8)
    expect(found.exact).toBe(false)
    // R 4.2.2 for 32 and 31 values: -2.70004, 12.60003 (V)
    expect(Math.abs(found.low + 2.7)).toBeLessThan(0.3)
    expect(Math.abs(found.high - 12.6)).toBeLessThan(0.3)
  })

  it('[GS6] says when nothing can be compared: nobody there, all alike, all under one limit', () => {
    expect(() => groupShift([], known(y), 0.8)).toThrow(DegenerateError)
    expect(() => groupShift(known([2, 2]), known([2]), 0.8)).toThrow(DegenerateError)
    expect(() => groupShift([below(1)], [below(1), below(1)], 0.8)).toThrow(DegenerateError)
    expect(() => groupShift([[2, 1]], known(y), 0.8)).toThrow(InputError)
    expect(() => groupShift([[Number.NaN, 1]], known(y), 0.8)).toThrow(InputError)
  })
})

describe('rank correlation', () => {
  it('[RC1] agrees with R, ties and all', () => {
    // R 4.2.2, stats: cor.test(a, b, method = "kendall", exact = FALSE): tau 0.767441860465116, p 0.00270957398631953 (V)
    const found = rankCorrelation(known([1, 2, 3, 4, 5, 6, 7, 7, 9, 4]), known([2, 1, 4, 3, 6, 6, 8, 9, 7, 4]), 0.8)
    expect(found.tau).toBeCloseTo(0.767441860465116, 12)
    expect(found.p).toBeCloseTo(0.00270957398631953, 12)
    expect(found.low).toBeLessThan(found.tau)
    expect(found.high).toBeGreaterThan(found.tau)
  })

  it('[RC2] is one in order, minus one against it, and the same whichever comes first', () => {
    const up = known([1, 2, 3, 4, 5, 6]), down = known([6, 5, 4, 3, 2, 1]), odd = known([2, 2, 9, 1, 4, 7])
    expect(rankCorrelation(up, up, 0.8).tau).toBe(1)
    expect(rankCorrelation(up, down, 0.8).tau).toBe(-1)
    expect(rankCorrelation(up, odd, 0.8)).toEqual(rankCorrelation(odd, up, 0.8))
  })

  it('[RC3] a value under a limit is below what is above the limit, and level with what is not', () => {
    const rise = rankCorrelation(known([1, 2, 3, 4, 5, 6]), [below(2), below(2), [3, 3], [4, 4], [5, 5], [6, 6]], 0.8)
    expect(rise.tau).toBeCloseTo(14 / Math.sqrt(15 * 14), 12) // fourteen of fifteen pairs told apart, all in order (R)
    expect(() => rankCorrelation(known([1, 2, 3]), known([1, 2, 3]), 0.8)).toThrow(DegenerateError)
    expect(() => rankCorrelation(known([1, 1, 1, 1, 1]), known([1, 2, 3, 4, 5]), 0.8)).toThrow(DegenerateError)
  })
})

describe('several questions at once', () => {
  it('[HO1] raises chances as R does', () => {
    // R 4.2.2, stats: p.adjust(c(.01, .04, .03, .005, .2), "holm") (V)
    const raised = holm([0.01, 0.04, 0.03, 0.005, 0.2])
    ;[0.04, 0.09, 0.09, 0.025, 0.2].forEach((p, i) => { expect(raised[i]).toBeCloseTo(p, 12) })
  })

  it('[HO2] nothing asked, nothing raised; a chance that is none is refused', () => {
    expect(holm([])).toEqual([])
    expect(() => holm([1.2])).toThrow(InputError)
    expect(() => holm([Number.NaN])).toThrow(InputError)
  })
})
