import betaQuantile from '@stdlib/stats-base-dists-beta-quantile'
import gammaQuantile from '@stdlib/stats-base-dists-gamma-quantile'
import { finite, InputError, positive } from '../core/index.ts'

/** What is believed of the minutes from one load to the next: theta = shape / mean has a gamma law. */
export interface LoadRate {
  /** Middle of the mean time between loads, minutes, with its 80 % range. */
  readonly minutes: number
  readonly low: number
  readonly high: number
  /** Gaps between loads that were taken for work, and those taken for a break. */
  readonly gaps: number
  readonly breaks: number
  readonly worked: number
  /** How even the gaps are: 1 / (their relative spread)². */
  readonly evenness: number
  readonly a: number
  readonly b: number
}

/** A gap longer than this many times the usual one is a break, and not counted as work. Common practice, no source. */
const breakTimes = 4
/** Before any gap is seen one load's time differs from the next by half of itself; that guess weighs as much as this many gaps. */
const priorSpread = 0.5, priorGaps = 5

/**
 * The pace of a crew learnt from when loads were tipped.
 *
 * Gaps are gamma distributed about their mean with a common evenness; the mean's prior is inverse gamma about what was reckoned. The
 * posterior is exact for a given evenness, which is taken from the gaps themselves, drawn towards the prior when they are few.
 * @param sessions  times of loads, minutes on any clock, rising within each session; a session with one load tells nothing
 * @param prior  minutes a load as reckoned, and how far off (a factor, one in ten beyond either side) that may be
 * @throws InputError for times that fall or are not finite, a prior out of bounds
 * Source: conjugate analysis of the gamma law with known shape (Gelman et al., Bayesian Data Analysis, ch. 2; from memory).
 */
export function loadRate(sessions: readonly (readonly number[])[], prior: { readonly minutes: number, readonly factor: number }): LoadRate {
  positive(prior.minutes, 'prior.minutes')
  if (!(prior.factor > 1 && Number.isFinite(prior.factor))) throw new InputError('prior.factor', prior.factor, 'a number above 1')
  const all = sessions.flatMap((times, s) => times.slice(1).map((time, i) => {
    const gap = finite(time, `sessions[${s}][${i + 1}]`) - finite(times[i]!, `sessions[${s}][${i}]`)
    if (gap < 0) throw new InputError(`sessions[${s}][${i + 1}]`, time, 'a time not before the one before it')
    return gap
  })).filter(gap => gap > 0)
  const usual = all.length >= 3 ? [...all].sort((p, q) => p - q)[Math.floor((all.length - 1) / 2)]! : prior.minutes
  const gaps = all.filter(gap => gap <= breakTimes * Math.max(usual, all.length < 3 ? prior.minutes : 0))
  const worked = gaps.reduce((sum, gap) => sum + gap, 0)
  const mean = gaps.length > 0 ? worked / gaps.length : prior.minutes
  const spread = (priorGaps * priorSpread ** 2 + gaps.reduce((sum, gap) => sum + (gap / mean - 1) ** 2, 0)) / (priorGaps + Math.max(0, gaps.length - 1))
  const evenness = Math.min(50, Math.max(1, 1 / spread))
  // Deciles of an inverse gamma law lie about a factor f apart from its middle when its shape is (1.2816 / ln f)².
  const shape = Math.max(1.5, (1.2816 / Math.log(prior.factor)) ** 2)
  const start = gammaQuantile(0.5, shape, 1) / (evenness / prior.minutes)
  const a = shape + evenness * gaps.length, b = start + worked
  const at = (p: number) => evenness / gammaQuantile(1 - p, a, b)
  return { minutes: at(0.5), low: at(0.1), high: at(0.9), gaps: gaps.length, breaks: all.length - gaps.length, worked, evenness, a, b }
}

/**
 * Minutes of work until so many more loads are tipped: middle and range over both the doubt of the pace and the scatter of the loads. The sum of
 * k gaps over a gamma belief is b X / (1 - X) with X of a beta law.
 * @param loads  one or more; need not be whole
 * @throws InputError for loads that are not above zero or a confidence outside (0, 1)
 */
export function timeForLoads(rate: LoadRate, loads: number, confidence = 0.8): { readonly minutes: number, readonly low: number, readonly high: number } {
  positive(loads, 'loads')
  if (!(confidence > 0 && confidence < 1)) throw new InputError('confidence', confidence, 'a number between 0 and 1')
  const at = (p: number): number => { const x = betaQuantile(p, rate.evenness * loads, rate.a); return rate.b * x / (1 - x) }
  return { minutes: at(0.5), low: at((1 - confidence) / 2), high: at((1 + confidence) / 2) }
}
