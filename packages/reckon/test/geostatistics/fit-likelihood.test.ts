import { determinant, inverse, Matrix } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import { drawModels, fitLikelihood, parameterRange, simulate, variogramAt } from '@lodebook/reckon/geostatistics'
import type { LikelihoodOptions, Point2, Sample, VariogramModel } from '@lodebook/reckon/geostatistics'
import { drawsFrom } from '@lodebook/reckon'
import { json, logZinc, modelOf } from './reference.ts'

const points = logZinc()

/** The same likelihood from its definition: dense matrices, determinants and inverses by ml-matrix. */
function byDefinition(rows: readonly Sample[], model: VariogramModel, method: 'reml' | 'ml', errors?: readonly number[]): number {
  const n = rows.length
  const sill = model.nugget + model.structures.reduce((sum, s) => sum + s.partialSill, 0)
  const k = new Matrix(rows.map((a, i) => rows.map((b, j) => sill - variogramAt(model, a[0] - b[0], a[1] - b[1]) + (i === j ? errors?.[i] ?? 0 : 0))))
  const [ones, z, inverted] = [Matrix.ones(n, 1), Matrix.columnVector(rows.map(row => row[2])), inverse(k)]
  const information = ones.transpose().mmul(inverted).mmul(ones).get(0, 0)
  const mean = ones.transpose().mmul(inverted).mmul(z).get(0, 0) / information
  const residual = z.clone().sub(mean)
  const squares = residual.transpose().mmul(inverted).mmul(residual).get(0, 0)
  const freedom = method === 'reml' ? n - 1 : n
  return -0.5 * (Math.log(determinant(k)) + (method === 'reml' ? Math.log(information) : 0) + squares + freedom * Math.log(2 * Math.PI))
}

const truth: VariogramModel = { nugget: 0.3, structures: [{ type: 'exponential', partialSill: 0.7, range: 12 }] }

function field(count: number, seed: number, model = truth): Sample[] {
  const draws = drawsFrom(seed)
  const places = Array.from({ length: count }, (): Point2 => [60 * draws.uniform(), 60 * draws.uniform()])
  const values = simulate([], places, model, { realisations: 1, seed, mean: 4 }).realisations[0]!
  return places.map(([x, y], i): Sample => [x, y, values[i]!])
}

describe('likelihood', () => {
  it('[LF1] log zinc, spherical: the maxima that numpy and scipy find (status R, reml_check.py beside this file)', () => {
    const held = fitLikelihood(points, { type: 'spherical', range: 900 })
    expect([held.nugget, held.partialSill, held.logLikelihood].map((value, i) => value / [0.027249602, 0.592919092, -101.586401914][i]!)).toEqual([
      expect.closeTo(1, 4), expect.closeTo(1, 4), expect.closeTo(1, 10)])
    // gstat 2.1-0 fit.variogram.reml (status R) ends near by, a hundredth of a unit of log likelihood below the maximum.
    const gstat = modelOf(json<{ fit_reml_sph: Parameters<typeof modelOf>[0] }>('variogram').fit_reml_sph)
    expect(held.logLikelihood - byDefinition(points, gstat, 'reml')).toBeGreaterThan(0)
    expect(held.logLikelihood - byDefinition(points, gstat, 'reml')).toBeLessThan(0.02)
    const fit = fitLikelihood(points, { type: 'spherical' })
    expect(fit.logLikelihood).toBeCloseTo(-97.45809192, 6)
    expect([fit.nugget / 0.037246939, fit.partialSill / 1.654148592, fit.range / 3030.684774]).toEqual([
      expect.closeTo(1, 3), expect.closeTo(1, 3), expect.closeTo(1, 3)])
    // Plain maximum likelihood has tops of -97.8869 and, narrower, -97.8806: either will do, they are the same evidence.
    expect(fitLikelihood(points, { type: 'spherical', method: 'ml' }).logLikelihood).toBeGreaterThan(-97.8869)
  })

  const methods: ['reml' | 'ml', boolean][] = [['reml', false], ['ml', false], ['reml', true]]
  it.each(methods)('[LF2] the value is that of the definition, and a maximum: %s, errors %s', (method, noisy) => {
    const rows = field(40, 3, { nugget: 0.2, structures: [{ type: 'exponential', partialSill: 1.8, range: 15 }] })
    const errorVariance = rows.map((_, i) => 0.05 * (1 + i % 3))
    const fit = fitLikelihood(rows, { type: 'exponential', method, ...(noisy && { errorVariance }) })
    const at = (model: VariogramModel) => byDefinition(rows, model, method, noisy ? errorVariance : undefined)
    expect(fit.logLikelihood).toBeCloseTo(at(fit.model), 8)
    for (const [a, b, c] of [[1.05, 1, 1], [0.95, 1, 1], [1, 1.05, 1], [1, 0.95, 1], [1, 1, 1.1], [1, 1, 0.9]] as const) {
      const near = { nugget: a * fit.nugget, structures: [{ type: 'exponential' as const, partialSill: b * fit.partialSill, range: c * fit.range }] }
      expect(at(near)).toBeLessThanOrEqual(fit.logLikelihood + 1e-9)
    }
    expect(fit.nodes.every(node => node.logBelief <= fit.logLikelihood + 1e-9)).toBe(true)
    expect(fit.nodes.reduce((sum, node) => sum + node.weight, 0)).toBeCloseTo(1, 12)
  })

  it('[LF3] ranges of parameters hold the truth, narrow with more samples, and their draws follow them', () => {
    const widths = [30, 120].map((count) => {
      const fit = fitLikelihood(field(count, 21), { type: 'exponential' })
      const sill = parameterRange(fit, 'sill', 0.9)
      const range = parameterRange(fit, 'range', 0.9)
      expect(sill.low).toBeLessThan(1)
      expect(sill.high).toBeGreaterThan(1)
      expect(range.low).toBeLessThan(12)
      expect(range.high).toBeGreaterThan(12)
      const models = drawModels(fit, 400, 3)
      expect(drawModels(fit, 400, 3)).toEqual(models)
      const inside = models.filter(model => model.structures[0]!.range >= range.low && model.structures[0]!.range <= range.high).length
      expect(inside / 400).toBeGreaterThan(0.87)
      return Math.log(range.high / range.low)
    })
    expect(widths[1]).toBeLessThan(widths[0]!)
  })

  it('[LF4] lengths and values in other units: the same fit', () => {
    const rows = field(40, 8)
    const plain = fitLikelihood(rows, { type: 'spherical' })
    const other = fitLikelihood(rows.map(([x, y, z]): Sample => [3.28 * x, 3.28 * y, 1e4 * z]), { type: 'spherical' })
    expect(other.range / plain.range).toBeCloseTo(3.28, 4)
    expect(other.partialSill / plain.partialSill / 1e8).toBeCloseTo(1, 4)
  })

  it('[LF5] with three samples the answer is the prior; with many it is the data', () => {
    const prior = { sill: { median: 1, factor: 2 }, range: { median: 12, factor: 1.6 }, nuggetShare: { a: 3, b: 5 } }
    const few = fitLikelihood([[0, 0, 1], [30, 5, 2], [55, 70, 1.5]], { type: 'exponential', prior })
    const range = parameterRange(few, 'range', 0.68)
    expect(Math.log(range.high / range.low) / 2 / Math.log(1.6)).toBeGreaterThan(0.7)
    expect(Math.log(range.high / range.low) / 2 / Math.log(1.6)).toBeLessThan(1.4)
    const wrong = { ...prior, sill: { median: 10, factor: 2 } }
    expect(fitLikelihood(field(80, 2), { type: 'exponential', prior: wrong }).model.nugget).toBeLessThan(1)
  })

  it('[LF6] a trend is not taken for a long range when the drift carries it', () => {
    const rows = field(80, 13).map(([x, y, z]): Sample => [x, y, z + 0.2 * x])
    const constant = fitLikelihood(rows, { type: 'exponential' })
    const linear = fitLikelihood(rows, { type: 'exponential', kind: 'universal' })
    expect(linear.partialSill).toBeLessThan(constant.partialSill / 2)
  })

  it('[LF7] too few, all equal, all at one spot, all on a plane, bad priors', () => {
    const fit = (rows: readonly Sample[], options: Partial<LikelihoodOptions> = {}) => () => fitLikelihood(rows, { type: 'spherical', ...options })
    expect(fit([])).toThrow('points')
    expect(fit([[0, 0, 1], [1, 1, 2]], { kind: 'universal' })).toThrow('too few')
    expect(fit([[3, 3, 1], [3, 3, 2], [3, 3, 5]])).toThrow('too few')
    expect(fit([[0, 0, 4], [1, 0, 4], [5, 2, 4]])).toThrow('no variance')
    expect(fit([[0, 0, 4], [1, 0, 5], [5, 2, 9], [3, 9, 7]], { kind: 'universal', prior: { range: { median: 0, factor: 2 } } })).toThrow('prior.range.median')
    expect(fit([[0, 0, 4], [1, 0, 5], [5, 2, 9]], { prior: { sill: { median: 1, factor: 1 } } })).toThrow('prior.sill.factor')
    expect(() => parameterRange(fitLikelihood(field(20, 1), { type: 'spherical' }), 'sill', 1)).toThrow('confidence')
    expect(fitLikelihood([[0, 0, 1e8], [1, 0, 5], [5, 2, 9], [4, 4, 2]], { type: 'spherical' }).partialSill).toBeGreaterThan(0)
  })
})
