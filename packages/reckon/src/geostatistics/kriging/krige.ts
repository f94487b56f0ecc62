import type { Point2, Sample, VariogramModel } from '../model.ts'
import { krigeAll } from './krige-all.ts'
import { krigeNear } from './krige-near.ts'
import { krigePlain } from './krige-plain.ts'
import { layOut } from './options.ts'
import type { KrigeOptions } from './options.ts'

/** Estimates, one per target in the order given. */
export interface Kriged {
  readonly means: Float64Array
  /** Variance of the error of each estimate, as the model has it. */
  readonly variances: Float64Array
  /** With `explain`: per target the weight of each point as given (0 outside the neighbourhood). */
  readonly weights?: readonly Float64Array[]
  /** How many points fell on the place of an earlier one and were merged with it. */
  readonly merged: number
  /** True when a covariance matrix was singular to working precision and its diagonal was raised by 1e-10 of itself. */
  readonly regularised: boolean
}

/**
 * Kriging: the best linear unbiased estimate of a field at points or over blocks, with the variance of its error.
 *
 * At a sample without error variance the point estimate is the sample, with variance 0. Samples at one place are merged
 * (see `gatherSamples`). The nugget is part of the field; it is left out between blocks and of a block with a sample.
 * @param points  rows of [x, y, value], any length unit; not modified
 * @param targets  rows of [x, y], the centres when `block` is given; may be empty
 * @param model  see `Structure`
 * @returns means, variances and, on request, weights. Weights sum to 1 for ordinary and universal kriging.
 * @throws InputError on what is not finite, no points, a negative variance, sill, range or ratio, neighbours below 1, lengths that differ
 * @throws DegenerateError 'drift undetermined' when the samples (or a neighbourhood) do not fix the drift; 'singular' when the
 *   covariance matrix cannot be inverted even after raising its diagonal by 1e-10
 * Cost: without `neighbours` one n x n matrix (n^3/3 operations and 8 n^2 bytes): ask for neighbours beyond some 5,000 samples.
 * Source: Matheron, G. (1963), Econ. Geol. 58: 1246-1266; Cressie, N. (1993) Statistics for spatial data, 3.2 to 3.4.
 */
export function krige(points: readonly Sample[], targets: readonly Point2[], model: VariogramModel, options: KrigeOptions): Kriged {
  const problem = layOut(points, targets, model, options)
  const merged = points.length - problem.samples.count
  if (options.explain === true) return { ...krigePlain(problem, true), merged }
  return { ...(problem.neighbours < problem.samples.count ? krigeNear(problem) : krigeAll(problem)), merged }
}
