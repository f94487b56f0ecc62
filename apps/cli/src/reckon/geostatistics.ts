import { z } from 'zod'
import { crossValidate, experimentalVariogram, fitVariogram, krige, simulate } from '@lodebook/reckon/geostatistics'
import type { KrigeOptions, VariogramModel } from '@lodebook/reckon/geostatistics'
import { reckoning } from './define.ts'
import type { Reckoning } from './define.ts'

const sample = z.tuple([z.number(), z.number(), z.number()])
const place = z.tuple([z.number(), z.number()])
const smoothness = z.union([z.literal(0.5), z.literal(1.5), z.literal(2.5)])
const type = z.enum(['spherical', 'exponential', 'gaussian', 'matern'])
const lag = z.strictObject({ pairs: z.number().positive(), distance: z.number().positive(), gamma: z.number().min(0) })

const model = z.strictObject({
  nugget: z.number().min(0),
  structures: z.array(z.strictObject({
    type, partial_sill: z.number().min(0), range: z.number().positive(), smoothness: smoothness.optional(),
    azimuth: z.number().optional(), ratio: z.number().positive().max(1).optional(),
  })),
}).refine(({ nugget, structures }) => nugget + structures.reduce((sum, s) => sum + s.partial_sill, 0) > 0, 'expected a sill (nugget plus partial sills) above zero')

const toModel = (m: z.output<typeof model>): VariogramModel => ({
  nugget: m.nugget,
  structures: m.structures.map(({ partial_sill: partialSill, type, range, smoothness, azimuth, ratio }) => ({
    type, partialSill, range,
    ...(smoothness !== undefined && { smoothness }), ...(azimuth !== undefined && { azimuth }), ...(ratio !== undefined && { ratio }),
  })),
})

const kriging = {
  points: z.array(sample).min(1),
  model,
  kind: z.enum(['simple', 'ordinary', 'universal']),
  mean: z.number().optional(),
  neighbours: z.int().min(1).optional(),
  error_variance: z.array(z.number().min(0)).optional(),
}

interface KrigingInput {
  readonly kind: KrigeOptions['kind']
  readonly mean?: number | undefined
  readonly neighbours?: number | undefined
  readonly error_variance?: readonly number[] | undefined
}

const toOptions = ({ kind, mean, neighbours, error_variance: errorVariance }: KrigingInput) => ({
  kind, ...(mean !== undefined && { mean }), ...(neighbours !== undefined && { neighbours }), ...(errorVariance !== undefined && { errorVariance }),
})

const perPoint = ({ points, error_variance }: { points: readonly unknown[], error_variance?: readonly number[] | undefined }) =>
  error_variance === undefined || error_variance.length === points.length
const perPointMessage = { path: ['error_variance'], message: 'expected one variance per point' }

const seven: z.output<typeof sample>[] = [[61, 139, 477], [63, 140, 696], [64, 129, 227], [68, 128, 646], [71, 140, 606], [73, 141, 791], [75, 128, 783]]
const exampleModel = { nugget: 0, structures: [{ type: 'exponential' as const, partial_sill: 10, range: 10 / 3 }] }

export const geostatistics: readonly Reckoning[] = [
  reckoning('variogram', 'Experimental variogram of points: pairs, mean distance and gamma per bin (0, w], (w, 2w] ...', z.strictObject({
    points: z.array(sample), cutoff: z.number().positive(), width: z.number().positive(),
    azimuth: z.number().optional(), tolerance: z.number().positive().max(90).optional(), estimator: z.enum(['classical', 'robust']).optional(),
  }), { points: seven, cutoff: 15, width: 5 }, ({ points, cutoff, width, azimuth, tolerance, estimator }) => ({
    lags: experimentalVariogram(points, {
      cutoff, width, ...(azimuth !== undefined && { azimuth }), ...(tolerance !== undefined && { tolerance }), ...(estimator !== undefined && { estimator }),
    }),
  })),

  reckoning('fit-variogram', 'Variogram model by least squares weighted with pairs / distance squared', z.strictObject({
    lags: z.array(lag).min(3), type, smoothness: smoothness.optional(),
    start: z.looseObject({ range: z.number().positive().optional() }).optional(),
  }), {
    type: 'spherical',
    lags: [{ pairs: 57, distance: 79.3, gamma: 0.123 }, { pairs: 299, distance: 164, gamma: 0.216 }, { pairs: 419, distance: 267.4, gamma: 0.303 },
      { pairs: 547, distance: 478.5, gamma: 0.463 }, { pairs: 574, distance: 693.1, gamma: 0.569 }, { pairs: 589, distance: 903.1, gamma: 0.647 }],
  }, ({ lags, type, smoothness, start }) => {
    const fit = fitVariogram(lags, {
      type, ...(smoothness !== undefined && { smoothness }), ...(start?.range !== undefined && { start: { range: start.range } }),
    })
    return {
      nugget: fit.nugget, partial_sill: fit.partialSill, range: fit.range, weighted_sse: fit.weightedSse,
      ...(fit.rangeAtBound !== undefined && { range_at_bound: fit.rangeAtBound }),
    }
  }),

  reckoning('krige', 'Simple, ordinary or universal kriging at points or over blocks, with error variances', z.strictObject({
    ...kriging, targets: z.array(place), block: z.tuple([z.number().positive(), z.number().positive()]).optional(),
    discretisation: z.union([z.literal('gauss'), z.strictObject({ cells: z.int().min(1).max(64) })]).optional(), explain: z.boolean().optional(),
  }).refine(perPoint, perPointMessage), { points: seven, targets: [[65, 137]], model: exampleModel, kind: 'ordinary', explain: true }, (input) => {
    const { points, targets, block, discretisation, explain } = input
    const result = krige(points, targets, toModel(input.model), {
      ...toOptions(input), ...(block !== undefined && { block }), ...(discretisation !== undefined && { discretisation }),
      ...(explain !== undefined && { explain }),
    })
    return {
      estimates: Array.from(result.means, (mean, i) => ({ mean, variance: result.variances[i]! })),
      ...(result.weights && { weights: result.weights.map(weights => Array.from(weights)) }),
      ...(result.merged > 0 && { merged: result.merged }),
      ...(result.regularised && { regularised: true }),
    }
  }),

  reckoning('cross-validate', 'Leave-one-out: each point kriged from the others', z.strictObject(kriging).refine(perPoint, perPointMessage),
    { points: seven, model: exampleModel, kind: 'ordinary' }, (input) => {
      const result = crossValidate(input.points, toModel(input.model), toOptions(input))
      return {
        residuals: Array.from(result.residuals), variances: Array.from(result.variances),
        mean_error: result.meanError, rmse: result.rmse, mean_square_z: result.meanSquareZ,
      }
    }),

  reckoning('simulate', 'Gaussian fields that honour the points; the same seed gives the same numbers', z.strictObject({
    points: z.array(sample), targets: z.array(place), model, realisations: z.int().min(0), seed: z.int(),
    mean: z.number().optional(), neighbours: z.int().min(1).optional(), error_variance: z.array(z.number().min(0)).optional(),
  }).refine(perPoint, perPointMessage), {
    points: [[0, 0, 0.5], [4, 1, -0.8]], targets: [[0, 0], [1, 1], [2, 3]], realisations: 2, seed: 1,
    model: { nugget: 0.1, structures: [{ type: 'spherical', partial_sill: 0.9, range: 6 }] },
  }, ({ points, targets, model, realisations, seed, mean, neighbours, error_variance: errorVariance }) => {
    const result = simulate(points, targets, toModel(model), {
      realisations, seed, ...(mean !== undefined && { mean }), ...(neighbours !== undefined && { neighbours }), ...(errorVariance && { errorVariance }),
    })
    return { realisations: result.realisations.map(values => Array.from(values)), method: result.method }
  }),
]
