import { InputError } from '../core/index.ts'
import { landLimit } from './land-limit.ts'
import type { LogSummary } from './land-limit.ts'
import { chebyshevUpper, checkedConfidence, coxLimit, studentUpper } from './mean-limits.ts'
import { checkedValues, mean, standardDeviation } from './moments.ts'
import { finneyFactor } from './sichel-factor.ts'

/**
 * Estimates and limits of a population's arithmetic mean from a few values; unit of the values.
 * Two-sided intervals and one-sided limits at the confidence asked.
 */
export interface LognormalMean extends LogSummary {
  readonly mean: number
  readonly sd: number
  /** Sichel's t, the unbiased estimate of least variance if the logs are normal; and one standard error of it. */
  readonly sichelT: number
  readonly sichelError: number
  readonly land: Limits
  readonly cox: Limits
  readonly studentUpper: number
  readonly chebyshevUpper: number
}

export interface Limits { readonly low: number, readonly high: number, readonly lowOneSided: number, readonly highOneSided: number }

/**
 * How much a few values say about the mean of where they came from, if the logs are normal.
 *
 * Plain means of gold assays jump with every high one; this weighs the logs and gives exact limits. Look at `shapiroWilk` of the logs first.
 * @param values      two or more, each above zero
 * @param confidence  in (0, 1)
 * @throws DegenerateError("too few"); InputError for a value that is not above zero
 * Source: Sichel 1966 and Finney 1941 for the estimate; Land 1971 for the limits (see those functions); error of the estimate: USEPA OSWER 9285.6-10, 2002.
 */
export function lognormalMean(values: readonly number[], confidence: number): LognormalMean {
  checkedConfidence(confidence)
  checkedValues(values, 'values', 2).forEach((value, i) => { if (!(value > 0)) throw new InputError(`values[${i}]`, value, 'a number above zero') })
  const logs = values.map(Math.log)
  const summary: LogSummary = { logMean: mean(logs), logSd: standardDeviation(logs), count: values.length }
  const plain = { mean: mean(values), sd: standardDeviation(values), count: values.length }
  const estimate = sichelEstimate(summary)
  const limits = (limit: (summary: LogSummary, side: 'upper' | 'lower', confidence: number) => number): Limits => ({
    low: limit(summary, 'lower', (1 + confidence) / 2), high: limit(summary, 'upper', (1 + confidence) / 2),
    lowOneSided: limit(summary, 'lower', confidence), highOneSided: limit(summary, 'upper', confidence),
  })
  return {
    ...summary, mean: plain.mean, sd: plain.sd, sichelT: estimate.mean, sichelError: estimate.error,
    land: limits(landLimit), cox: limits(coxLimit),
    studentUpper: studentUpper(plain, confidence), chebyshevUpper: chebyshevUpper(estimate.mean, estimate.error, confidence),
  }
}

/** Sichel's t and its standard error from the logs' summary; two or more values. */
export function sichelEstimate({ logMean, logSd, count }: LogSummary): { readonly mean: number, readonly error: number } {
  const s2 = logSd * logSd
  const factor = finneyFactor(s2 / 2, count)
  const square = factor * factor - finneyFactor(s2 * (count - 2) / (count - 1), count)
  return { mean: Math.exp(logMean) * factor, error: Math.exp(logMean) * Math.sqrt(Math.max(0, square)) }
}
