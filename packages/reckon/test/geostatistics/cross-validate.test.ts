import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { crossValidate, krige } from '@lodebook/reckon/geostatistics'
import type { CrossValidateOptions, Sample, VariogramModel } from '@lodebook/reckon/geostatistics'
import { columns, json, logZinc, worst } from './reference.ts'

interface Case { mean: number, rmse: number, z_meansq: number, var: number[], residual: number[] }
const reference = json<Record<string, Case>>('cv')
const points = logZinc()
const spherical: VariogramModel = { nugget: 0.05, structures: [{ type: 'spherical', partialSill: 0.59, range: 897 }] }
const anisotropic: VariogramModel = { nugget: 0.05, structures: [{ type: 'spherical', partialSill: 0.59, range: 1200, azimuth: 45, ratio: 0.4 }] }
const exponential: VariogramModel = { nugget: 0, structures: [{ type: 'exponential', partialSill: 0.719, range: 450 }] }
const short: VariogramModel = { nugget: 0.05, structures: [{ type: 'spherical', partialSill: 0.15, range: 700 }] }
const root = columns('reference/meuse.csv')('dist').map(distance => [Math.sqrt(distance)])
/** One factorisation against 155 solved one by one in another library. */
const SOLVE = 1e-9

describe('leave-one-out', () => {
  it.each<[string, VariogramModel, CrossValidateOptions]>([
    ['ok_sph_global', spherical, { kind: 'ordinary' }],
    ['ok_sph_nmax16', spherical, { kind: 'ordinary', neighbours: 16 }],
    ['ok_sph_nmax32', spherical, { kind: 'ordinary', neighbours: 32 }],
    ['ok_aniso_global', anisotropic, { kind: 'ordinary' }],
    ['ok_exp_global', exponential, { kind: 'ordinary' }],
    ['sk5.9_sph_global', spherical, { kind: 'simple', mean: 5.9 }],
    ['uk_linear_sph_global', spherical, { kind: 'universal' }],
    ['ked_sqrtdist_global', short, { kind: 'universal', covariates: root }],
  ])('[CV1] %s equals gstat 2.1-0 (status R)', (name, model, options) => {
    const actual = crossValidate(points, model, options)
    const expected = reference[name]!
    expect(worst(actual.residuals, expected.residual)).toBeLessThan(SOLVE)
    expect(worst(actual.variances, expected.var)).toBeLessThan(SOLVE)
    expect(worst([actual.meanError, actual.rmse, actual.meanSquareZ], [expected.mean, expected.rmse, expected.z_meansq])).toBeLessThan(SOLVE)
  })

  it('[CV2] log zinc with the fitted model: mean error -0.000021, RMSE 0.391803, mean squared z 0.81856', () => {
    // Recomputed baseline (R), the model as gstat documentation prints it (M).
    const fitted: VariogramModel = { nugget: 0.05066, structures: [{ type: 'spherical', partialSill: 0.59061, range: 897.02 }] }
    const { meanError, rmse, meanSquareZ } = crossValidate(points, fitted, { kind: 'ordinary' })
    expect(meanError).toBeCloseTo(-0.000021, 6)
    expect(rmse).toBeCloseTo(0.391803, 6)
    expect(meanSquareZ).toBeCloseTo(0.81856, 5)
  })

  it('[CV3] is what kriging says when the point is taken out, with error variances and points at one place', () => {
    const coordinate = fc.integer({ min: 0, max: 6 })
    let compared = 0
    const rows = fc.array(fc.tuple(coordinate, coordinate, fc.integer({ min: -9, max: 9 }), fc.constantFrom(0.1, 0.5, 2)), { minLength: 6, maxLength: 14 })
    fc.assert(fc.property(rows, fc.constantFrom('simple', 'ordinary', 'universal'), fc.constantFrom(undefined, 4), (given, kind, neighbours) => {
      const data = given.map(([x, y, z]): Sample => [x, y, z])
      const errors = given.map(row => row[3])
      const model: VariogramModel = { nugget: 0.2, structures: [{ type: 'exponential', partialSill: 3, range: 2.7 }] }
      const options = { kind, mean: 1.5, ...(neighbours !== undefined && { neighbours }) } as const
      let all
      try { all = crossValidate(data, model, { ...options, errorVariance: errors }) } catch { return } // places on a line, or too few
      for (let i = 0; i < data.length; i++) {
        const others = data.map((_, j) => j).filter(j => data[j]![0] !== data[i]![0] || data[j]![1] !== data[i]![1])
        let single
        try {
          single = krige(others.map(j => data[j]!), [[data[i]![0], data[i]![1]]], model, { ...options, errorVariance: others.map(j => errors[j]!) })
        } catch { continue } // the others do not fix the drift
        compared++
        expect(all.residuals[i]).toBeCloseTo(data[i]![2] - single.means[0]!, 8)
        expect(all.variances[i]).toBeCloseTo(single.variances[0]! + errors[i]!, 8)
      }
    }), { seed: 5, numRuns: 150 })
    expect(compared).toBeGreaterThan(1000)
  })

  it('[CV4] one point, or all at one spot, cannot be left out', () => {
    expect(() => crossValidate([[0, 0, 1]], exponential, { kind: 'simple' })).toThrow('too few')
    expect(() => crossValidate([[3, 3, 1], [3, 3, 2]], exponential, { kind: 'ordinary' })).toThrow('too few')
    expect(() => crossValidate([[0, 0, 1], [1, 0, 2], [2, 0, 4], [3, 0, 4]], exponential, { kind: 'universal' })).toThrow('drift undetermined')
  })
})
