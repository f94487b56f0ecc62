import { DegenerateError, finite, positive } from '../core/index.ts'
import { checkLook, logLikelihood } from './gold-look.ts'
import type { GoldLook } from './gold-look.ts'

/** What is thought of a grade before any look, on natural logs of g/t. */
export interface GradePrior { readonly logMean: number, readonly logSd: number }

export interface SampleBelief {
  /** Mean and standard deviation of ln(g/t), prior included. */
  readonly logMean: number
  readonly logSd: number
  /** Mean of the grade itself, g/t, prior included: what to add up when ounces are wanted. Above the median, the more so the greater the doubt. */
  readonly mean: number
  /** Median, and the range that holds it with 80 %, g/t. */
  readonly median: number
  readonly low: number
  readonly high: number
  /** What the looks alone say, the prior taken out again, for use where samples are put together: value and variance of ln(g/t). */
  readonly evidence: { readonly logValue: number, readonly variance: number }
}

const steps = 600
const [logLow, logHigh] = [Math.log(1e-5), Math.log(1e6)]
/** Grades less believable than exp(-this) of the best are left out of the fine grid. */
const depth = 32

/**
 * What all looks at one sample say together of its grade.
 *
 * The grains in a portion are a Poisson count at the sample's own grade, so that a lean look does not seem surer than a rich one, and a look
 * that found nothing is evidence of little rather than of zero. Limits enter by their likelihood, never as half of themselves.
 * @throws DegenerateError("no looks"); InputError naming the look and the field
 * Accuracy: a first grid of ln(g/t) finds where belief lies, a second of 600 steps lies over just that: medians and ranges to about 0.1 % of themselves.
 * Source: Poisson grain counts: Clifton et al., USGS Professional Paper 625-C, 1969 (from memory); their mixture with other errors is the negative
 * binomial, Greenwood and Yule, J. R. Statist. Soc. 83, 1920, 255 (from memory).
 */
export function sampleBelief(looks: readonly GoldLook[], prior: GradePrior): SampleBelief {
  if (looks.length === 0) throw new DegenerateError('no looks', 'looks', 0, 'at least one pan or assay')
  looks.forEach(checkLook)
  finite(prior.logMean, 'prior.logMean')
  positive(prior.logSd, 'prior.logSd')
  const logBelief = (value: number) => looks.reduce((sum, look) => sum + logLikelihood(look, value), 0) - ((value - prior.logMean) / prior.logSd) ** 2 / 2
  const [from, to] = whereBelieved(logBelief)
  const step = (to - from) / steps
  const x = Float64Array.from({ length: steps + 1 }, (_, i) => from + i * step)
  const log = x.map(logBelief)
  const best = log.reduce((a, b) => Math.max(a, b), -Infinity)
  const weight = log.map(value => Math.exp(value - best))
  const total = weight.reduce((a, b) => a + b, 0)
  const logMean = weight.reduce((sum, w, i) => sum + w * x[i]!, 0) / total
  const variance = weight.reduce((sum, w, i) => sum + w * (x[i]! - logMean) ** 2, 0) / total
  const quantile = (p: number) => {
    let reached = 0
    for (let i = 0; i <= steps; i++) {
      const share = weight[i]! / total
      if (reached + share >= p) return Math.exp(x[i]! + step * ((p - reached) / share - 0.5))
      reached += share
    }
    return Math.exp(to)
  }
  // Prior out again. A look that says next to nothing keeps a large but finite variance.
  const precision = Math.max(1 / variance - 1 / prior.logSd ** 2, 1e-3)
  return {
    logMean, logSd: Math.sqrt(variance), mean: weight.reduce((sum, w, i) => sum + w * Math.exp(x[i]!), 0) / total,
    median: quantile(0.5), low: quantile(0.1), high: quantile(0.9),
    evidence: { logValue: (logMean / variance - prior.logMean / prior.logSd ** 2) / precision, variance: 1 / precision },
  }
}

/** The stretch of ln(g/t) that holds all belief worth counting. A first look over everything may step over a sharp peak, so it is narrowed in turns. */
function whereBelieved(logBelief: (value: number) => number): [number, number] {
  let [from, to] = [logLow, logHigh]
  for (;;) {
    const step = (to - from) / steps
    const log = Array.from({ length: steps + 1 }, (_, i) => logBelief(from + i * step))
    const best = Math.max(...log)
    const first = log.findIndex(value => value > best - depth)
    const last = log.findLastIndex(value => value > best - depth)
    const [nextFrom, nextTo] = [from + Math.max(0, first - 1) * step, from + Math.min(steps, last + 1) * step]
    if (nextTo - nextFrom > (to - from) / 4) return [nextFrom, nextTo]
    from = nextFrom
    to = nextTo
  }
}
