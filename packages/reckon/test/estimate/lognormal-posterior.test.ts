import { drawsFrom, InputError } from '@lodebook/reckon'
import { drawLognormalMeans, lognormalPosterior } from '@lodebook/reckon/estimate'
import { describe, expect, it } from 'vitest'

describe('a population\'s mean from few lognormal values with errors of their own', () => {
  const known = { median: 1.44, factor: 1.0001 }
  it('[LP1] with the variance known and exact values it is the textbook normal mean (checks 8.7 with a flat mean: mean of logs, variance s²/n)', () => {
    const nodes = lognormalPosterior([1.1, 1.6, 2.1, 1.6].map(logValue => ({ logValue, errorVariance: 0 })), known)
    for (const node of nodes) {
      expect(node.logMean).toBeCloseTo(1.6, 12)
      expect(node.logMeanVariance).toBeCloseTo(1.44 / 4, 3)
    }
    expect(nodes.reduce((sum, n) => sum + n.weight, 0)).toBeCloseTo(1, 12)
  })

  it('[LP2] a value with a larger error counts for less', () => {
    const [node] = lognormalPosterior([{ logValue: 0, errorVariance: 0 }, { logValue: 3, errorVariance: 1.44 }], known)
    expect(node!.logMean).toBeCloseTo(1, 3) // weights 2 to 1
  })

  it('[LP3] one value gives the prior back for the variance', () => {
    const nodes = lognormalPosterior([{ logValue: 0.7, errorVariance: 0.2 }], { median: 0.5, factor: 2 })
    const mean = nodes.reduce((sum, n) => sum + n.weight * Math.log(n.variance), 0)
    expect(mean).toBeCloseTo(Math.log(0.5), 10)
  })

  it('[LP4] 80 % ranges hold truths drawn from the prior 80 % of the time, at 2 and at 8 values', () => {
    const draws = drawsFrom(7), trials = 600
    for (const n of [2, 8]) {
      let held = 0
      for (let t = 0; t < trials; t++) {
        const variance = 0.5 * 2 ** draws.normal(), mean = 1 + 2 * draws.normal()
        const values = Array.from({ length: n }, () => {
          const errorVariance = 0.1 + draws.uniform()
          return { logValue: mean + Math.sqrt(variance + errorVariance) * draws.normal(), errorVariance }
        })
        const sorted = drawLognormalMeans(lognormalPosterior(values, { median: 0.5, factor: 2 }), 400, draws).sort()
        const truth = Math.exp(mean + variance / 2)
        if (truth >= sorted[40]! && truth <= sorted[360]!) held++
      }
      expect(Math.abs(held / trials - 0.8)).toBeLessThan(3 * Math.sqrt(0.16 / trials))
    }
  })

  it.each([[[], 'values'], [[{ logValue: Number.NaN, errorVariance: 0 }], 'values[0].logValue'], [[{ logValue: 0, errorVariance: -1 }], 'values[0].errorVariance']])(
    '[LP5] refuses %j', (values, field) => {
      expect(() => lognormalPosterior(values, known)).toThrow(InputError)
      try { lognormalPosterior(values, known) } catch (error) { expect((error as InputError).field).toBe(field) }
    })
})
