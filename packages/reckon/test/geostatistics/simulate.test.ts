import { describe, expect, it } from 'vitest'
import { krige, simulate } from '@lodebook/reckon/geostatistics'
import type { Point2, Sample, VariogramModel } from '@lodebook/reckon/geostatistics'
import { json, placesOf, samplesOf } from './reference.ts'
import { normalScores } from './normal-scores.ts'

interface Check {
  nodes50: { node: number[], exact_mean: number[], exact_var: number[], exact_prob_zinc_gt_500: number[], threshold_nscore_500: number }
  covariance_of_50_nodes: { exact_first8x8: number[][] }
  variogram: { np: number[], exact_expected: number[] }
  z_of_means: { sd: number }
}
const check = json<Check>('sgs_check')
const zinc = samplesOf('reference/meuse.csv', 'zinc')
const scores = normalScores(zinc.map(row => row[2]))
const points = zinc.map(([x, y], i): Sample => [x, y, scores[i]!])
const grid = placesOf('reference/meuse_grid.csv')
const model: VariogramModel = { nugget: 0.08, structures: [{ type: 'spherical', partialSill: 0.92, range: 900 }] }
const nodes = check.nodes50.node.map(node => node - 1)
const REALISATIONS = 200

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
function variance(values: readonly number[]): number {
  const m = mean(values)
  return values.reduce((sum, value) => sum + (value - m) ** 2, 0) / (values.length - 1)
}

const methods = [['sequential', grid, nodes], ['exact', nodes.map(node => grid[node]!), nodes.map((_, i) => i)]] as const
describe.each(methods)('simulation, %s, beside the exact conditional distribution', (method, targets, at) => {
  const simulation = simulate(points, targets, model, { realisations: REALISATIONS, seed: 42 })
  const drawn = at.map(target => simulation.realisations.map(values => values[target]!))

  it('[SI1] means of nodes: z-scores have standard deviation near 1 (one path for all realisations with its error left in: 1.68)', () => {
    // Reference: exact conditional means and variances by dense numpy (R), 50 nodes of the meuse grid, 155 data.
    expect(simulation.method).toBe(method)
    const z = drawn.map((values, i) => (mean(values) - check.nodes50.exact_mean[i]!) / Math.sqrt(check.nodes50.exact_var[i]! / REALISATIONS))
    // 50 z-scores, nearly independent: their standard deviation is 1 +- 0.1, so 0.75 to 1.25 is +- 2.5 of its own; 1.68 is far out.
    expect(check.z_of_means.sd).toBeGreaterThan(1.6)
    expect(Math.sqrt(variance(z))).toBeGreaterThan(0.75)
    expect(Math.sqrt(variance(z))).toBeLessThan(1.25)
    expect(Math.abs(mean(z))).toBeLessThan(2.5 * Math.sqrt(1 / 50))
  })

  it('[SI2] variances, covariances and the chance of more than 500 ppm are those of the exact distribution', () => {
    const ratio = drawn.map((values, i) => variance(values) / check.nodes50.exact_var[i]!)
    // Each ratio is chi-square / 199 with standard deviation 0.1; their mean 0.014.
    expect(Math.abs(mean(ratio) - 1)).toBeLessThan(0.04)
    expect(ratio.filter(r => r > 0.8132 && r < 1.2064).length).toBeGreaterThanOrEqual(44)
    const exact = check.covariance_of_50_nodes.exact_first8x8
    for (let i = 0; i < 8; i++) {
      for (let j = 0; j < i; j++) {
        const [a, b] = [drawn[i]!, drawn[j]!]
        const covariance = a.reduce((sum, value, r) => sum + (value - mean(a)) * (b[r]! - mean(b)), 0) / (REALISATIONS - 1)
        const error = Math.sqrt((exact[i]![i]! * exact[j]![j]! + exact[i]![j]! ** 2) / (REALISATIONS - 1))
        expect(Math.abs(covariance - exact[i]![j]!)).toBeLessThan(3.5 * error)
      }
    }
    drawn.forEach((values, i) => {
      const p = check.nodes50.exact_prob_zinc_gt_500[i]!
      const share = values.filter(value => value > check.nodes50.threshold_nscore_500).length / REALISATIONS
      expect(Math.abs(share - p)).toBeLessThan(3.7 * Math.sqrt(p * (1 - p) / REALISATIONS) + 0.01)
    })
  })
})

describe('simulation', () => {
  it('[SI3] the variogram of realisations is the expected one, 15 bins over all 3103 nodes', () => {
    const { realisations } = simulate(points, grid, model, { realisations: 12, seed: 7 })
    const [pairs, sums] = [new Float64Array(15), realisations.map(() => new Float64Array(15))]
    for (let i = 0; i < grid.length; i++) {
      for (let j = i + 1; j < grid.length; j++) {
        const bin = Math.ceil(Math.hypot(grid[i]![0] - grid[j]![0], grid[i]![1] - grid[j]![1]) / 100 - 1e-12) - 1
        if (bin >= 15) continue
        pairs[bin]! += 1
        realisations.forEach((values, r) => { sums[r]![bin]! += (values[i]! - values[j]!) ** 2 / 2 })
      }
    }
    check.variogram.np.forEach((np, bin) => {
      expect(pairs[bin]).toBe(np)
      const gammas = sums.map(sum => sum[bin]! / np)
      // 12 realisations: within 4 standard errors of their own scatter.
      expect(Math.abs(mean(gammas) - check.variogram.exact_expected[bin]!)).toBeLessThan(4 * Math.sqrt(variance(gammas) / 12))
    })
  })

  it('[SI4] the same seed gives the same numbers, another seed others, and realisation r does not depend on how many', () => {
    for (const neighbours of [undefined, 12]) {
      const run = (seed: number, realisations: number) =>
        simulate(points, grid.slice(0, 80), model, { realisations, seed, ...(neighbours !== undefined && { neighbours }) }).realisations
      expect(run(3, 4)).toEqual(run(3, 4))
      expect(run(3, 6).slice(0, 4)).toEqual(run(3, 4))
      expect(run(3, 1)).not.toEqual(run(4, 1))
      expect(run(3, 2)[0]).not.toEqual(run(3, 2)[1])
    }
  })

  it('[SI5] targets at exact samples take their values; at one place, one value', () => {
    const targets: Point2[] = [[points[3]![0], points[3]![1]], [180000, 332000], [180000, 332000], [points[9]![0], points[9]![1]]]
    for (const neighbours of [undefined, 12]) {
      const { realisations } = simulate(points, targets, model, { realisations: 3, seed: 1, ...(neighbours !== undefined && { neighbours }) })
      for (const values of realisations) {
        expect([values[0], values[3]]).toEqual([points[3]![2], points[9]![2]])
        expect(values[1]).toBe(values[2])
      }
    }
  })

  it.each([undefined, 6])('[SI6] samples with errors: mean and spread at a sample are the kriged ones (neighbours %s)', (neighbours) => {
    const data: Sample[] = [[0, 0, 1], [4, 0, -1], [0, 5, 2], [7, 7, 0.5]]
    const errorVariance = [0.5, 0.1, 1, 0.2]
    const targets: Point2[] = [[0, 0], [4, 0], [2, 2]]
    const near: VariogramModel = { nugget: 0.1, structures: [{ type: 'exponential', partialSill: 0.9, range: 4 }] }
    const options = { realisations: 4000, seed: 9, errorVariance, mean: 0.4, ...(neighbours !== undefined && { neighbours }) }
    const { realisations } = simulate(data, targets, near, options)
    const exact = krige(data, targets, near, { kind: 'simple', mean: 0.4, errorVariance })
    targets.forEach((_, t) => {
      const values = realisations.map(drawn => drawn[t]!)
      expect(Math.abs(mean(values) - exact.means[t]!)).toBeLessThan(4 * Math.sqrt(exact.variances[t]! / 4000))
      expect(Math.abs(variance(values) / exact.variances[t]! - 1)).toBeLessThan(4 * Math.sqrt(2 / 4000))
    })
  })

  it('[SI7] without samples: mean, variance and covariance of the model', () => {
    const targets: Point2[] = [[0, 0], [100, 0]]
    for (const neighbours of [undefined, 1]) {
      const { realisations } = simulate([], targets, model, { realisations: 5000, seed: 2, mean: 3, ...(neighbours !== undefined && { neighbours }) })
      const [a, b] = [realisations.map(values => values[0]!), realisations.map(values => values[1]!)]
      expect(Math.abs(mean(a) - 3)).toBeLessThan(4 / Math.sqrt(5000))
      expect(Math.abs(variance(b) - 1)).toBeLessThan(4 * Math.sqrt(2 / 5000))
      const rho = 0.92 * (1 - 1.5 / 9 + 0.5 / 729)
      const correlation = a.reduce((sum, value, r) => sum + (value - mean(a)) * (b[r]! - mean(b)), 0) / 4999 / Math.sqrt(variance(a) * variance(b))
      expect(Math.abs(correlation - rho)).toBeLessThan(4 * (1 - rho ** 2) / Math.sqrt(5000))
    }
  })

  it('[SI8] no targets, no realisations, bad seeds and counts', () => {
    expect(simulate(points, [], model, { realisations: 2, seed: 1 }).realisations.map(values => values.length)).toEqual([0, 0])
    expect(simulate(points, grid.slice(0, 2), model, { realisations: 0, seed: 1 }).realisations).toEqual([])
    const run = (options: object) => () => simulate(points, grid.slice(0, 2), model, { realisations: 1, seed: 1, ...options })
    expect(run({ seed: 1.5 })).toThrow('seed')
    expect(run({ realisations: -1 })).toThrow('realisations')
    expect(run({ neighbours: 0 })).toThrow('neighbours')
  })
})
