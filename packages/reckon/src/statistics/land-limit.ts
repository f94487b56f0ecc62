import { DegenerateError, InputError } from '../core/index.ts'
import { fallingThrough } from './find-crossing.ts'
import { integral } from './gauss-legendre.ts'

/** Mean log, standard deviation of logs (n - 1 below) and number of values. */
export interface LogSummary { readonly logMean: number, readonly logSd: number, readonly count: number }

/** Panels are as wide as the peak's own deviation; this many to either side hold all but 1e-30 of it. */
const peakReach = 12

/**
 * Chance, if the log of the population's arithmetic mean is `theta`, of a mean log as low as the one seen or lower, given the root mean square
 * of the logs about `theta`. Given that root mean square, the direction cosine c of the logs to the diagonal has density
 * (1 - c²)^((n-3)/2) exp(-a c), a = n rms / 2: no unknown is left in it. With c = sin p it is cos(p)^(n-2) exp(-a sin p).
 */
function chanceBelow({ logMean, logSd, count: n }: LogSummary, theta: number): number {
  const shift = logMean - theta
  const radius = Math.hypot(Math.sqrt(n - 1) * logSd, Math.sqrt(n) * shift)
  const seen = Math.atan2(Math.sqrt(n) * shift, Math.sqrt(n - 1) * logSd)
  const a = Math.sqrt(n) * radius / 2
  const sine = a === 0 ? 0 : -2 * a / (n - 2 + Math.hypot(n - 2, 2 * a))
  const peak = Math.asin(Math.max(-1, sine))
  const logDensity = (p: number) => (n === 2 ? 0 : (n - 2) * Math.log(Math.cos(p))) - a * Math.sin(p)
  const top = logDensity(peak)
  const density = (p: number) => Math.exp(logDensity(p) - top)
  const width = 1 / Math.sqrt((n - 2) / Math.max(1 - sine * sine, Number.MIN_VALUE) - a * sine)
  const panel = Number.isFinite(width) && width > 0 ? width : Math.PI
  const [from, to] = [Math.max(-Math.PI / 2, peak - peakReach * panel), Math.min(Math.PI / 2, peak + peakReach * panel)]
  const below = integral(density, from, Math.min(seen, to), panel)
  const above = integral(density, Math.max(seen, from), to, panel)
  return below / (below + above)
}

/**
 * Land's exact one-sided confidence limit for the arithmetic mean of a lognormal population.
 *
 * Use for few assays: the limit is exact for any number of values, where the usual tables stop and approximations differ widely. When the logs
 * scatter much and values are few it is very high, and rightly so; it trusts lognormality in the upper tail that nobody has seen.
 * @param confidence  chance that the true mean lies below an upper limit (above a lower one), in (0, 1)
 * @returns in the unit of the values; Infinity when beyond the numbers
 * @throws DegenerateError("too few") for fewer than two values; InputError
 * Accuracy: about 1e-12 on the log.
 * Source: Land, Ann. Math. Statist. 42, 1971, 1187 (method from memory, the conditional density derived here); checked against the exact limit published
 * for USEPA 1992's chromium values.
 */
export function landLimit(summary: LogSummary, side: 'upper' | 'lower', confidence: number): number {
  const { logMean, logSd, count } = summary
  if (!(confidence > 0 && confidence < 1)) throw new InputError('confidence', confidence, 'between 0 and 1')
  if (count < 2) throw new DegenerateError('too few', 'values', count, 'two or more values')
  if (!(logSd >= 0 && Number.isFinite(logSd))) throw new InputError('logSd', logSd, 'zero or more')
  if (logSd === 0) return Math.exp(logMean)
  const level = side === 'upper' ? 1 - confidence : confidence
  const start = logMean + logSd * logSd / 2
  return Math.exp(fallingThrough(theta => chanceBelow(summary, theta), level, start, logSd / Math.sqrt(count)))
}

/** Land's H for an upper limit written exp(mean log + s²/2 + H s / sqrt(n - 1)); what tables print. */
export const landH = (summary: LogSummary, limit: number): number =>
  (Math.log(limit) - summary.logMean - summary.logSd ** 2 / 2) * Math.sqrt(summary.count - 1) / summary.logSd
