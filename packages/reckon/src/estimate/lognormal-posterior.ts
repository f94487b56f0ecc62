import { finite, InputError, positive } from '../core/index.ts'
import type { Draws } from '../core/index.ts'

/** One value's logarithm and the variance of its own error on logs; 0 when it is exact. */
export interface LogValue { readonly logValue: number, readonly errorVariance: number }

/** What is thought of a variance of logs before any value: a median, and the factor that one standard deviation on logs is. */
export interface VariancePrior { readonly median: number, readonly factor: number }

/** One candidate variance, the mean log that goes with it and its variance, and its share of belief. */
export interface LogMeanNode { readonly variance: number, readonly logMean: number, readonly logMeanVariance: number, readonly weight: number }

/** Candidates this far either side of the prior's median, in its standard deviations, and so many of them. */
const reach = 2.6
const steps = 41

/**
 * What a few lognormal values, each with an error of its own, say about the population they came from: the mean of the logs is integrated
 * out (flat), the variance of the logs between places keeps a stated prior. So even one value gives an answer, carried by the prior.
 *
 * Use where there are too few values, or none of them has a place, for a variogram to mean anything: heaps, and fewer than ten samples.
 * Values must be independent of each other.
 * @param values  one or more
 * @returns candidates with weights that sum to 1, by increasing variance
 * @throws InputError
 * Source: Box and Tiao, Bayesian Inference in Statistical Analysis, 1973, sec. 2.4 (from memory), with unequal errors; conjugate form: checks 8.7.
 */
export function lognormalPosterior(values: readonly LogValue[], prior: VariancePrior): readonly LogMeanNode[] {
  if (values.length === 0) throw new InputError('values', values, 'one value or more')
  values.forEach(({ logValue, errorVariance }, i) => {
    finite(logValue, `values[${i}].logValue`)
    if (!(errorVariance >= 0 && Number.isFinite(errorVariance))) throw new InputError(`values[${i}].errorVariance`, errorVariance, 'zero or more')
  })
  positive(prior.median, 'prior.median')
  if (!(prior.factor > 1 && Number.isFinite(prior.factor))) throw new InputError('prior.factor', prior.factor, 'a factor above 1')
  const drafts = Array.from({ length: steps }, (_, i) => {
    const apart = reach * (2 * i / (steps - 1) - 1)
    const variance = prior.median * prior.factor ** apart
    const precision = values.reduce((sum, v) => sum + 1 / (variance + v.errorVariance), 0)
    const logMean = values.reduce((sum, v) => sum + v.logValue / (variance + v.errorVariance), 0) / precision
    const misfit = Math.log(precision) + values.reduce((sum, v) => {
      const spread = variance + v.errorVariance
      return sum + Math.log(spread) + (v.logValue - logMean) ** 2 / spread
    }, 0)
    return { variance, logMean, logMeanVariance: 1 / precision, logWeight: -misfit / 2 - apart * apart / 2 }
  })
  const most = drafts.reduce((best, d) => Math.max(best, d.logWeight), -Infinity)
  const total = drafts.reduce((sum, d) => sum + Math.exp(d.logWeight - most), 0)
  return drafts.map(({ logWeight, ...node }) => ({ ...node, weight: Math.exp(logWeight - most) / total }))
}

/** Draws the population's arithmetic mean, exp(mean log + half the variance), in proportion to belief; the unit of the values. */
export function drawLognormalMeans(nodes: readonly LogMeanNode[], count: number, draws: Draws): Float64Array {
  return Float64Array.from({ length: count }, () => {
    let left = draws.uniform()
    const node = nodes.find((n) => { left -= n.weight; return left < 0 }) ?? nodes.at(-1)!
    return Math.exp(node.logMean + Math.sqrt(node.logMeanVariance) * draws.normal() + node.variance / 2)
  })
}
