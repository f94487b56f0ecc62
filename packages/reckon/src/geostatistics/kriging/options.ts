import { finite, InputError } from '../../core/index.ts'
import { Covariance } from '../covariance.ts'
import { driftOf, gatherTargets } from '../drift.ts'
import type { Covariates, Drift, KrigingKind } from '../drift.ts'
import type { Point2, Sample, VariogramModel } from '../model.ts'
import { gatherSamples } from '../samples.ts'
import type { Samples } from '../samples.ts'
import { blockSupport, POINT, supportVariance } from '../support.ts'
import type { Discretisation, Support } from '../support.ts'

export interface KrigeOptions {
  /** simple: known mean (`mean`). ordinary: unknown constant mean. universal: a mean that is linear in x and y, or in `covariates`. */
  readonly kind: KrigingKind
  /** The known mean, for simple kriging; 0 unless given. */
  readonly mean?: number
  /** Use only this many nearest samples, by plain Euclidean distance (ties: the earlier sample); all unless given. */
  readonly neighbours?: number
  /** Estimate the mean over a block [dx, dy] centred at each target, in place of the point. */
  readonly block?: readonly [dx: number, dy: number]
  /** How the block is made of points; 4 x 4 Gauss-Legendre unless given. */
  readonly discretisation?: Discretisation
  /** Variance of each sample's error of measurement, per point; 0 is exact. The estimate is of the field without these errors. */
  readonly errorVariance?: readonly number[]
  /** What the mean follows in universal kriging, in place of x and y. */
  readonly covariates?: Covariates
  /** Also give each target's weights. */
  readonly explain?: boolean
}

/** Everything a kriging needs, checked and laid out for computing. */
export interface Problem {
  readonly samples: Samples
  readonly covariance: Covariance
  readonly drift: Drift
  readonly support: Support
  /** Variance of the mean over the support. */
  readonly own: number
  readonly mean: number
  readonly targets: { readonly count: number, readonly xs: Float64Array, readonly ys: Float64Array }
  /** Samples used per target: the count of (merged) samples when all are. */
  readonly neighbours: number
}

/** @throws InputError, see `krige` */
export function layOut(points: readonly Sample[], targets: readonly Point2[], model: VariogramModel, options: KrigeOptions): Problem {
  const samples = gatherSamples(points, options.errorVariance)
  const { kind, neighbours = samples.count } = options
  if (!(Number.isInteger(neighbours) && neighbours >= 1)) throw new InputError('neighbours', neighbours, 'a whole number, 1 or more')
  const covariance = new Covariance(model, samples.coincidence)
  const support = options.block === undefined ? POINT : blockSupport(options.block, options.discretisation)
  return {
    samples, covariance, support,
    drift: driftOf(kind, samples, targets.length, options.covariates),
    own: supportVariance(covariance, support),
    mean: kind === 'simple' ? finite(options.mean ?? 0, 'mean') : 0,
    targets: gatherTargets(targets),
    neighbours: Math.min(neighbours, samples.count),
  }
}
