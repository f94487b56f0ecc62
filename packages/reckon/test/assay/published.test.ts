import { describe, expect, it } from 'vitest'
import { controlChart, duplicateMeasures, horwitzPct, precisionModel, robustFactors, screenAssay } from '../../src/assay/index.ts'
import { drawsFrom } from '../../src/core/index.ts'

// Status of each value: V read in the source, M from memory, R recomputed.

describe('screen assay: Beringer, A Text-Book of Assaying, 9th ed. 1904, metallics', () => {
  const grade = screenAssay({ plus: { mass: 1, grade: 84.2 }, minus: { mass: 399, grades: [0.525] } })
  it('V: 1 g of metallics at 84.2 % and 399 g of siftings at 0.525 % are 0.7342 %; R 0.7341875', () => {
    expect(Math.abs(grade - 0.7342)).toBeLessThan(0.00005)
    expect(grade).toBeCloseTo(0.7341875, 10)
  })
  it('V: which is 239.84 oz a long ton; R 239.835', () => {
    // 1 % is 10,000 g/t; 1 oz/long ton is 1500/49 g/t
    expect(grade * 10_000 * 49 / 1500).toBeCloseTo(239.835, 3)
  })
  it('V: the quick way gives 240.25 (R 240.26), 0.17 % too high, and is not what is done here', () => {
    const quick = (0.105 + 0.842 * 20 / 400) / 20 * 100
    expect(Math.abs(quick * 10_000 * 49 / 1500 - 240.25)).toBeLessThan(0.02)
    expect(quick / grade - 1).toBeCloseTo(0.0018, 4)
  })
})

describe('control chart: rules of PMC3909142, table 1 (V)', () => {
  const rules = (z: readonly number[], wording?: 'pair' | 'range') => controlChart(10, 2, z.map(v => 10 + 2 * v), wording).breaches
  const has = (z: readonly number[], rule: string, wording?: 'pair' | 'range') => rules(z, wording).some(b => b.rule === rule)
  it('V: 1_2s warns, 1_3s rejects', () => {
    expect(rules([0, 2.5])).toEqual([{ rule: '1_2s', at: 1, warning: true }])
    expect(rules([0, -3.2]).map(b => [b.rule, b.warning])).toEqual([['1_3s', false], ['1_2s', true]])
    expect(rules([2, 1.9, -2])).toEqual([])
  })
  it('V: 2_2s takes two in a row on the same side, not one on each', () => {
    expect(has([2.1, 2.4], '2_2s')).toBe(true)
    expect(has([2.1, -2.4], '2_2s')).toBe(false)
    expect(has([2.1, 0, 2.4], '2_2s')).toBe(false)
  })
  it('V: the two wordings of R_4s: +2.5 and -1.6 only by range; +2.1 and -2.1 by both', () => {
    expect(has([2.5, -1.6], 'R_4s', 'range')).toBe(true)
    expect(has([2.5, -1.6], 'R_4s', 'pair')).toBe(false)
    expect(has([2.1, -2.1], 'R_4s', 'range')).toBe(true)
    expect(has([2.1, -2.1], 'R_4s')).toBe(true)
  })
  it('V: 4_1s and 10_x', () => {
    expect(rules([1.1, 1.2, 1.5, 1.3]).filter(b => b.rule === '4_1s')).toEqual([{ rule: '4_1s', at: 3, warning: false }])
    expect(has([1.1, 1.2, -1.5, 1.3], '4_1s')).toBe(false)
    expect(rules(Array.from({ length: 10 }, () => 0.3))).toEqual([{ rule: '10_x', at: 9, warning: false }])
    expect(has(Array.from({ length: 9 }, () => 0.3), '10_x')).toBe(false)
  })
  it('returns z', () => { expect(controlChart(5, 0.5, [5, 6, 4.5]).z).toEqual([0, 2, -1]) })
})

describe('duplicates', () => {
  it('M formula (Abzalov 2008), R: one pair with HARD 10 % has a CV of 14.14 %', () => {
    const { cvAveragePct, hard } = duplicateMeasures([[11, 9]])
    expect(hard[0]).toBeCloseTo(0.1, 14)
    expect(cvAveragePct).toBeCloseTo(14.14, 2)
    expect(cvAveragePct).toBeCloseTo(Math.SQRT2 * 10, 12)
  })
  it('V: constants of Stanley and Lawie 2007: 1.04836, 1.48260, 0.70711; R 1.048358, 1.482602', () => {
    expect(robustFactors.medianDifference).toBeCloseTo(1.048358, 6)
    expect(robustFactors.medianSd).toBeCloseTo(1.482602, 6)
    expect(robustFactors.rmsDifference).toBeCloseTo(0.70711, 5)
  })
  it('finds the line it was given: 0.2 g/t and 8 % put in', () => {
    const draws = drawsFrom(3)
    const pairs = Array.from({ length: 3300 }, () => {
      const grade = 1 + 29 * draws.uniform()
      const sd = 0.2 + 0.08 * grade
      return [grade + sd * draws.normal(), grade + sd * draws.normal()].map(v => Math.max(0, v)) as unknown as readonly [number, number]
    })
    const model = precisionModel(pairs)!
    expect(Math.abs(model.k - 0.08)).toBeLessThan(0.012)
    expect(Math.abs(model.s0 - 0.2)).toBeLessThan(0.12)
    expect(model.precisionPct(10)).toBeCloseTo(200 * (model.s0 / 10 + model.k), 10)
    expect(model.groups).toBe(300)
  })
})

describe('precision usual between laboratories', () => {
  // V: AOAC table as printed
  it.each([[1, 2], [0.01, 4], [1e-4, 8], [1e-6, 16], [1e-8, 32], [1e-9, 45]])('V: at mass fraction %d it is %d per cent', (fraction, pct) => {
    expect(Math.abs(horwitzPct(fraction) - pct)).toBeLessThan(0.3)
  })
  it('R: 45.25 at 1 ppb', () => { expect(horwitzPct(1e-9)).toBeCloseTo(45.25, 2) })
})
