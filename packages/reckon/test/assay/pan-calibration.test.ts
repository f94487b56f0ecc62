import betaQuantile from '@stdlib/stats-base-dists-beta-quantile'
import { describe, expect, it } from 'vitest'
import { drawsFrom } from '../../src/core/index.ts'
import { pairsFor, panCalibration } from '../../src/assay/index.ts'
import type { GoldLook, PanAndAssay } from '../../src/assay/index.ts'

const prior = { logMean: 2, logSd: 1.2 }
const look = (mass: number, found: GoldLook['found'], relativeSd = 0.05, grain = 0.05): GoldLook => ({ mass, grain, recovery: 1, relativeSd, found })

describe('what share of the gold pans keep', () => {
  it('[PC1] salted grains alone give the middle and range of their binomial share (Beta, cut to 0.1 to 1)', () => {
    const { share, low, high, relativeSd, pairs } = panCalibration([], prior, { found: 61, seeded: 80 })
    // An even prior over the share: Beta(62, 20). The grid is 0.02 wide.
    expect(share).toBeCloseTo(betaQuantile(0.5, 62, 20), 2)
    expect(Math.abs(low - betaQuantile(0.1, 62, 20))).toBeLessThan(0.006)
    expect(Math.abs(high - betaQuantile(0.9, 62, 20))).toBeLessThan(0.006)
    expect(relativeSd).toBeCloseTo(Math.sqrt(62 * 20 / (82 ** 2 * 83)) / (62 / 82), 3)
    expect(pairs).toBe(0)
  })

  it('[PC2] many fine-grained pairs give back the share that made them', () => {
    const pairs = Array.from({ length: 30 }, (_, i): PanAndAssay =>
      ({ pan: look(4000, { grade: 0.7 * (4 + i) }, 0.02, 0.001), assay: look(100, { grade: 4 + i }, 0.02, 0.001) }))
    const { share, low, high } = panCalibration(pairs, { logMean: Math.log(15), logSd: 1 })
    expect(share).toBeCloseTo(0.7, 1)
    expect(low).toBeLessThan(0.71)
    expect(high).toBeGreaterThan(0.69)
    expect(high - low).toBeLessThan(0.06)
  })

  it('[PC3] coarse gold in small charges: the range holds the share about as often as it says, which the middle of ratios would not', () => {
    const truth = 0.75
    let held = 0
    const books = 120, biases: number[] = []
    for (let b = 0; b < books; b++) {
      const draws = drawsFrom(700 + b)
      // Knuth's Poisson from the draws' own uniform numbers.
      const poisson = (mean: number) => {
        if (mean > 60) return Math.max(0, Math.round(mean + Math.sqrt(mean) * draws.normal()))
        let n = 0
        for (let p = draws.uniform(); p > Math.exp(-mean); p *= draws.uniform()) n++
        return n
      }
      const pairs = Array.from({ length: 20 }, (): PanAndAssay => {
        const grade = Math.exp(prior.logMean + prior.logSd * draws.normal()), grain = 0.2
        const panned = poisson(grade * truth * 4000 / (1000 * grain)), charged = poisson(grade * 30 / (1000 * grain))
        const assay = charged * 1000 * grain / 30
        const found = assay === 0 ? { below: 0.17 } : { grade: assay }
        return { pan: look(4000, { grade: panned * 1000 * grain / 4000 }, 0.05, grain), assay: look(30, found, 0.05, grain) }
      })
      const { share, low, high } = panCalibration(pairs, prior)
      biases.push(share - truth)
      if (truth >= low && truth <= high) held++
    }
    // 120 books: one standard deviation of the share is 3.7 %.
    expect(held / books).toBeGreaterThan(0.7)
    expect(held / books).toBeLessThan(0.92)
    expect(Math.abs(biases.reduce((a, x) => a + x, 0) / books)).toBeLessThan(0.04)
  })

  it('[PC4] a pan that found nothing, or less than a limit, speaks for a lower share; pairs and salted grains add up', () => {
    const even: PanAndAssay = { pan: look(4000, { grade: 8 }), assay: look(1000, { grade: 10 }) }
    const all = panCalibration([even, even], prior)
    expect(panCalibration([even, even, { pan: look(4000, { grade: 0 }), assay: look(1000, { grade: 10 }) }], prior).share).toBeLessThan(all.share)
    expect(panCalibration([even, even, { pan: look(4000, { below: 3 }), assay: look(1000, { grade: 10 }) }], prior).share).toBeLessThan(all.share)
    const both = panCalibration([even, even], prior, { found: 80, seeded: 100 })
    expect(both.relativeSd).toBeLessThan(Math.min(all.relativeSd, panCalibration([], prior, { found: 80, seeded: 100 }).relativeSd))
    expect(both.pairs).toBe(2)
    expect(panCalibration([], prior, { found: 20, seeded: 20 }).high).toBeLessThanOrEqual(1)
  })

  it('[PC5] what a pan is said to keep already is not read', () => {
    const pair = (recovery: number): PanAndAssay => ({ pan: { ...look(4000, { grade: 8 }), recovery }, assay: look(500, { grade: 10 }) })
    expect(panCalibration([pair(0.3)], prior)).toEqual(panCalibration([pair(1)], prior))
  })

  it('[PC6] how many more pairs: doubt falls as the root of their number', () => {
    expect(pairsFor({ pairs: 10, relativeSd: 0.2 }, 0.1)).toBe(30)
    expect(pairsFor({ pairs: 10, relativeSd: 0.1 }, 0.1)).toBe(0)
    expect(pairsFor({ pairs: 10, relativeSd: 0.1 }, 0.3)).toBe(0)
    expect(() => pairsFor({ pairs: 0, relativeSd: 0.1 }, 0.1)).toThrow('nothing to go by')
    expect(() => pairsFor({ pairs: 3, relativeSd: 0.1 }, 0)).toThrow('wanted')
  })

  it('[PC7] refuses what says nothing, and names the look that can be none', () => {
    expect(() => panCalibration([], prior)).toThrow('nothing to go by')
    expect(() => panCalibration([], prior, { found: 0, seeded: 0 })).toThrow('nothing to go by')
    for (const found of [-1, 21, 1.5]) expect(() => panCalibration([], prior, { found, seeded: 20 })).toThrow('salted.found')
    const good = look(1, { grade: 1 })
    expect(() => panCalibration([{ pan: { ...good, mass: 0 }, assay: good }], prior)).toThrow('looks[0].mass')
    expect(() => panCalibration([{ pan: good, assay: { ...good, grain: -1 } }], prior)).toThrow('looks[1].grain')
    expect(() => panCalibration([{ pan: good, assay: good }], { logMean: Number.NaN, logSd: 1 })).toThrow('prior.logMean')
    expect(() => panCalibration([{ pan: good, assay: good }], { logMean: 0, logSd: 0 })).toThrow('prior.logSd')
  })
})
