import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { geostatistics } from '../../src/reckon/geostatistics.ts'

const run = (name: string, input: unknown) => geostatistics.find(reckoning => reckoning.name === name)!.run(input)

/** Log zinc of the meuse data, rows [x, y, value]. */
const points = readFileSync(new URL('../../../../checks/reference/meuse.csv', import.meta.url), 'utf8').trim().split('\n').slice(1).map((line) => {
  const cells = line.split(',').map(Number)
  return [cells[0]!, cells[1]!, Math.log(cells[5]!)]
})
const spherical = { nugget: 0.05066, structures: [{ type: 'spherical', partial_sill: 0.59061, range: 897.02 }] }

describe('variogram, fit-variogram, krige, cross-validate, simulate at the prompt', () => {
  it.each(geostatistics.map(reckoning => [reckoning.name, reckoning] as const))('%s: its example runs', (_, { example, run }) => {
    expect(JSON.stringify(run(example))).not.toContain('null')
  })

  // Status V: r-spatial/gstat tests/variogram.Rout.save; the fit M, recomputed R
  it('variogram of log zinc and its spherical fit', () => {
    const { lags } = run('variogram', { points, cutoff: 1596.62261595462, width: 1596.62261595462 / 15 }) as { lags: { pairs: number, gamma: number }[] }
    expect(lags.map(lag => lag.pairs)).toEqual([57, 299, 419, 457, 547, 533, 574, 564, 589, 543, 500, 477, 452, 457, 415])
    expect(lags[0]!.gamma).toBeCloseTo(0.1234479, 7)
    expect(run('fit-variogram', { lags, type: 'spherical', start: { nugget: 0.05, partial_sill: 0.6, range: 900 } })).toEqual({
      nugget: expect.closeTo(0.05066, 5) as number, partial_sill: expect.closeTo(0.59061, 5) as number, range: expect.closeTo(897.0, 1) as number,
      weighted_sse: expect.closeTo(9.011e-6, 9) as number })
  })

  // Isaaks and Srivastava (1989) ch. 12: figures M, recomputed R; data V
  it('krige: seven samples, 592.73 and 8.956, with weights that sum to 1', () => {
    const { estimates, weights } = geostatistics.find(reckoning => reckoning.name === 'krige')!.run({
      points: [[61, 139, 477], [63, 140, 696], [64, 129, 227], [68, 128, 646], [71, 140, 606], [73, 141, 791], [75, 128, 783]],
      targets: [[65, 137]], kind: 'ordinary', explain: true, model: { nugget: 0, structures: [{ type: 'exponential', partial_sill: 10, range: 1 / 0.3 }] },
    }) as { estimates: { mean: number, variance: number }[], weights: number[][] }
    expect(estimates[0]!.mean).toBeCloseTo(592.729, 3)
    expect(estimates[0]!.variance).toBeCloseTo(8.956, 3)
    expect(weights[0]!.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12)
  })

  // Own baseline (R): checks/grade-and-pay.md 5.6
  it('cross-validate: RMSE 0.391803, mean squared z 0.81856', () => {
    const result = run('cross-validate', { points, model: spherical, kind: 'ordinary' }) as { rmse: number, mean_square_z: number, residuals: number[] }
    expect(result.rmse).toBeCloseTo(0.391803, 6)
    expect(result.mean_square_z).toBeCloseTo(0.81856, 5)
    expect(result.residuals.length).toBe(155)
  })

  it('simulate: the same seed, the same numbers; targets at points take their values', () => {
    const input = { points: [[0, 0, 0.5], [4, 1, -0.8]], targets: [[0, 0], [2, 2]], realisations: 3, seed: 7, model: spherical }
    const { realisations } = run('simulate', input) as { realisations: number[][] }
    expect(run('simulate', input)).toEqual(run('simulate', input))
    expect(realisations.map(values => values[0])).toEqual([0.5, 0.5, 0.5])
  })

  it.each([
    ['variogram', { points: [[0, 0]], cutoff: 1, width: 1 }],
    ['variogram', { points: [], cutoff: 0, width: 1 }],
    ['fit-variogram', { lags: [], type: 'spherical' }],
    ['fit-variogram', { lags: [{ pairs: 1, distance: 1, gamma: -1 }, { pairs: 1, distance: 2, gamma: 1 }, { pairs: 1, distance: 3, gamma: 1 }], type: 'spherical' }],
    ['krige', { points: [], targets: [], model: spherical, kind: 'ordinary' }],
    ['krige', { points, targets: [[0, 0]], model: { nugget: -1, structures: [] }, kind: 'ordinary' }],
    ['krige', { points, targets: [[0, 0]], model: { nugget: 0, structures: [] }, kind: 'ordinary' }],
    ['krige', { points, targets: [[0, 0]], model: spherical, kind: 'ordinary', error_variance: [1] }],
    ['krige', { points: points.slice(0, 2), targets: [[0, 0]], model: spherical, kind: 'universal' }],
    ['cross-validate', { points: points.slice(0, 1), model: spherical, kind: 'ordinary' }],
    ['simulate', { points, targets: [[0, 0]], model: spherical, realisations: 1, seed: 0.5 }],
  ])('%s refuses what will not do (case %#)', (name, input) => { expect(() => run(name, input)).toThrow() })
})
