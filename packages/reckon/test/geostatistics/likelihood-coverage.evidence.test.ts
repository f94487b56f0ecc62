import { describe, expect, it } from 'vitest'
import { fitLikelihood, parameterRange, simulate } from '@lodebook/reckon/geostatistics'
import type { Point2, Sample, VariogramModel } from '@lodebook/reckon/geostatistics'
import { drawsFrom } from '@lodebook/reckon'

const SEEDS = 200
const prior = { sill: { median: 1, factor: 1.8 }, range: { median: 12, factor: 1.7 }, nuggetShare: { a: 2, b: 3 } }

describe('stated doubt about a variogram', () => {
  it.each([12, 40])('[LE1] ranges of range and sill stated at 0.8 hold the truth 0.8 of the time, truths drawn from the prior, %i samples', (count) => {
    const held = { range: 0, sill: 0 }
    for (let seed = 1; seed <= SEEDS; seed++) {
      const draws = drawsFrom(1000 + seed)
      const about = ({ median, factor }: { median: number, factor: number }) => median * factor ** draws.normal()
      const [sill, range] = [about(prior.sill), about(prior.range)]
      // Beta(2, 3) as the second least of four uniform numbers.
      const share = [0, 0, 0, 0].map(() => draws.uniform()).sort((a, b) => a - b)[1]!
      const model: VariogramModel = { nugget: sill * share, structures: [{ type: 'exponential', partialSill: sill * (1 - share), range }] }
      const places = Array.from({ length: count }, (): Point2 => [60 * draws.uniform(), 60 * draws.uniform()])
      const values = simulate([], places, model, { realisations: 1, seed }).realisations[0]!
      const errorVariance = places.map((_, i) => 0.1 * (i % 3))
      const rows = places.map(([x, y], i): Sample => [x, y, values[i]! + Math.sqrt(errorVariance[i]!) * draws.normal()])
      const fit = fitLikelihood(rows, { type: 'exponential', prior, errorVariance })
      for (const [parameter, true_] of [['range', range], ['sill', sill]] as const) {
        const { low, high } = parameterRange(fit, parameter, 0.8)
        if (low <= true_ && true_ <= high) held[parameter]++
      }
    }
    // 200 trials: 160 +- 5.7; the grid's steps widen or narrow a range by up to a step, hence three standard deviations.
    for (const times of Object.values(held)) {
      expect(times / SEEDS).toBeGreaterThan(0.71)
      expect(times / SEEDS).toBeLessThan(0.89)
    }
  })
})
