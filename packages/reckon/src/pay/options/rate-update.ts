import { positive } from '../../core/index.ts'
import { decile } from './spread.ts'
import type { Spread } from './spread.ts'

/** One shift as logged: what was done (t or m) and the person-days that it took. */
export interface LoggedShift { readonly amount: number, readonly days: number }

export interface RateUpdate extends Spread {
  /** Share of the say that the logs have beside the prior, 0 to 1. */
  readonly fromLogs: number
  /** Standard deviation of the log of one shift's rate, as the update took it. */
  readonly shiftSd: number
}

/** Before any is logged, shifts differ by so much (sd of the log of the rate), and that guess counts as so many shifts. Common practice, no source. */
const [usualShiftSd, shiftsItCounts] = [0.35, 4]
/** Conditions change from the ground logged to the ground to come: sd of the log. Common practice, no source. */
export const changingConditions = 0.15

/**
 * A rate of work learnt from logs: a lognormal prior updated by what the shifts come to.
 *
 * What counts is the long-run rate: all that was done over all the days it took. Its log has variance s²/n for n shifts, with s² from the scatter of the
 * shifts drawn towards a usual one; prior and logs are weighed by precision (conjugate normal), and 15 % for changing conditions is added.
 * @param prior  positive, low < high
 * @param shifts  amounts and days above zero; none gives the prior back, as it was
 * Source: conjugate normal update, checks/grade-and-pay.md 8.7 (M); the scatter's shrinkage is the usual scaled inverse chi-square mean (M).
 */
export function updatedRate(prior: Spread, shifts: readonly LoggedShift[]): RateUpdate {
  const priorSd = Math.log(positive(prior.high, 'prior.high') / positive(prior.low, 'prior.low')) / (2 * decile)
  if (shifts.length === 0) return { median: prior.median, low: prior.low, high: prior.high, fromLogs: 0, shiftSd: usualShiftSd }
  const amount = shifts.reduce((sum, s) => sum + positive(s.amount, 'shifts.amount'), 0)
  const days = shifts.reduce((sum, s) => sum + positive(s.days, 'shifts.days'), 0)
  const n = shifts.length
  const logRate = Math.log(amount / days)
  const scatter = shifts.reduce((sum, s) => sum + (Math.log(s.amount / s.days) - logRate) ** 2, 0)
  const variance = (scatter + shiftsItCounts * usualShiftSd ** 2) / (n - 1 + shiftsItCounts)
  const [priorWeight, logWeight] = [priorSd > 0 ? 1 / priorSd ** 2 : Infinity, n / variance]
  const fromLogs = priorWeight === Infinity ? 0 : logWeight / (priorWeight + logWeight)
  const middle = (1 - fromLogs) * Math.log(prior.median) + fromLogs * logRate
  const sd = Math.hypot(Math.sqrt(priorWeight === Infinity ? 0 : 1 / (priorWeight + logWeight)), changingConditions)
  return { median: Math.exp(middle), low: Math.exp(middle - decile * sd), high: Math.exp(middle + decile * sd), fromLogs, shiftSd: Math.sqrt(variance) }
}
