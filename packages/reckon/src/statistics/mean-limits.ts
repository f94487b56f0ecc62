import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import tQuantile from '@stdlib/stats-base-dists-t-quantile'
import { InputError } from '../core/index.ts'
import type { LogSummary } from './land-limit.ts'

/** What is needed of a sample to limit its mean: mean, standard deviation (n - 1 below), number of values. */
export interface Summary { readonly mean: number, readonly sd: number, readonly count: number }

export function checkedConfidence(confidence: number): number {
  if (!(confidence > 0 && confidence < 1)) throw new InputError('confidence', confidence, 'between 0 and 1')
  return confidence
}

/** Student's one-sided upper limit of the mean. Right for values that are near normal; too low for grades with a long tail. */
export const studentUpper = ({ mean, sd, count }: Summary, confidence: number): number =>
  mean + tQuantile(checkedConfidence(confidence), count - 1) * sd / Math.sqrt(count)

/** Chebyshev's one-sided upper limit: holds whatever the distribution, so far as mean and error are themselves known. */
export const chebyshevUpper = (mean: number, standardError: number, confidence: number): number =>
  mean + Math.sqrt(1 / (1 - checkedConfidence(confidence)) - 1) * standardError

/**
 * Upper limit by the central limit theorem with a correction for skewness.
 * Source: USEPA OSWER 9285.6-10, 2002 (data read, formula from memory).
 */
export function skewedUpper({ mean, sd, count }: Summary, skewness: number, confidence: number): number {
  const z = normalQuantile(checkedConfidence(confidence), 0, 1)
  return mean + (z + skewness / (6 * Math.sqrt(count)) * (1 + 2 * z * z)) * sd / Math.sqrt(count)
}

/** What divides s⁴/2 in Cox's variance: n + 1 makes it unbiased; n - 1 is the plug-in. */
export interface CoxForm { readonly quantile: 't' | 'z', readonly divisor: 'n+1' | 'n-1' }

/**
 * Cox's one-sided limit of a lognormal population's mean: exp(y + s²/2 +- q sqrt(s²/n + s⁴/(2 d))).
 * Close to Land's for many values and modest scatter, well below it otherwise.
 * @param form  t with n + 1 unless said
 * Source: Land, Technometrics 14, 1972, 145 (from memory); forms as in R's EnvStats.
 */
export function coxLimit({ logMean, logSd, count }: LogSummary, side: 'upper' | 'lower', confidence: number, form: CoxForm = { quantile: 't', divisor: 'n+1' }): number {
  const q = form.quantile === 't' ? tQuantile(checkedConfidence(confidence), count - 1) : normalQuantile(checkedConfidence(confidence), 0, 1)
  const error = Math.sqrt(logSd ** 2 / count + logSd ** 4 / (2 * (form.divisor === 'n+1' ? count + 1 : count - 1)))
  return Math.exp(logMean + logSd ** 2 / 2 + (side === 'upper' ? q : -q) * error)
}
