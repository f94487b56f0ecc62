import { DegenerateError, InputError, positive } from '../core/index.ts'

/**
 * One look at a sample's gold: a portion of so much mass in which gold was found, weighed, counted or assayed.
 * How far it can be trusted follows from how many grains the portion can have held, not from how precisely it was weighed.
 */
export interface GoldLook {
  /** Mass of the portion looked at, g. */
  readonly mass: number
  /** Mass of the grains that carry the gold, mg: the mass-weighted mean. */
  readonly grain: number
  /** Share of the portion's gold that the look finds: 1 for an assay, a pan's recovery. */
  readonly recovery: number
  /** Relative standard deviation of all else: analysis, weighing, recovery, mass of a colour. */
  readonly relativeSd: number
  /** Grade the look gave before recovery is put right, g/t; or only a limit it was under or over. */
  readonly found: { readonly grade: number } | { readonly below: number } | { readonly above: number }
}

/** What is thought of a grade before any look, on natural logs of g/t. */
export interface GradePrior { readonly logMean: number, readonly logSd: number }

export interface SampleBelief {
  /** Mean and standard deviation of ln(g/t), prior included. */
  readonly logMean: number
  readonly logSd: number
  /** Median, and the range that holds it with 80 %, g/t. */
  readonly median: number
  readonly low: number
  readonly high: number
  /** What the looks alone say, the prior taken out again, for use where samples are put together: value and variance of ln(g/t). */
  readonly evidence: { readonly logValue: number, readonly variance: number }
}

const steps = 600
const [logLow, logHigh] = [Math.log(1e-5), Math.log(1e6)]

/** ln P(at most k grains) when so many are expected. */
function logAtMost(k: number, expected: number): number {
  let term = 1
  let sum = 1
  for (let i = 1; i <= k; i++) { term *= expected / i; sum += term }
  return Math.log(sum) - expected
}

/** Above this many grains a count is as good as normal, and its sum need not be made term by term. */
const manyGrains = 150

/** ln of the likelihood of a look when the sample's grade is g. */
function logLikelihood(look: GoldLook, logGrade: number): number {
  // 1 g/t in 1 g is 1 µg, a thousandth of a mg.
  const grains = look.mass * look.recovery / (1000 * look.grain)
  const expected = Math.exp(logGrade) * grains
  const other = look.relativeSd ** 2
  const { found } = look
  if ('grade' in found) {
    // A count need not be whole: gold found over the mass of a grain. Everything else widens the likelihood without moving it.
    const count = found.grade / look.recovery * grains
    if (count === 0) return -expected
    return (count * logGrade - expected) / (1 + other * count)
  }
  const limit = ('below' in found ? found.below : found.above) / look.recovery * grains
  if (limit > manyGrains) {
    const sd = Math.sqrt(limit + (other * limit) * limit)
    const z = (limit - expected) / sd
    return logNormalTail('below' in found ? -z : z)
  }
  const atMost = logAtMost(Math.floor(limit), expected)
  return 'below' in found ? atMost : Math.log(Math.max(Number.MIN_VALUE, -Math.expm1(Math.min(-1e-300, atMost))))
}

/**
 * ln P(Z > z), good to a few per cent in its value, which is ample for a limit.
 * Source: Mills' ratio for z > 5, logistic form elsewhere (Bowling et al. 2009, from memory).
 */
function logNormalTail(z: number): number {
  if (z > 5) return -z * z / 2 - Math.log(z * Math.sqrt(2 * Math.PI))
  return -Math.log1p(Math.exp(0.07056 * z ** 3 + 1.5976 * z))
}

/**
 * What all looks at one sample say together of its grade.
 *
 * The grains in a portion are a Poisson count at the sample's own grade, so that a lean look does not seem surer than a rich one, and a look
 * that found nothing is evidence of little rather than of zero. Limits enter by their likelihood, never as half of themselves.
 * @throws DegenerateError("no looks"); InputError naming the look and the field
 * Accuracy: the grid of ln(g/t) has steps of 0.042; medians and ranges are good to half of that.
 * Source: Poisson grain counts: Clifton et al., USGS Professional Paper 625-C, 1969 (from memory); quasi-likelihood for the rest: Wedderburn,
 * Biometrika 61, 1974, 439 (from memory).
 */
export function sampleBelief(looks: readonly GoldLook[], prior: GradePrior): SampleBelief {
  if (looks.length === 0) throw new DegenerateError('no looks', 'looks', 0, 'at least one pan or assay')
  looks.forEach(checkLook)
  positive(prior.logSd, 'prior.logSd')
  const step = (logHigh - logLow) / steps
  const x = Float64Array.from({ length: steps + 1 }, (_, i) => logLow + i * step)
  const log = x.map(value => looks.reduce((sum, look) => sum + logLikelihood(look, value), 0) - ((value - prior.logMean) / prior.logSd) ** 2 / 2)
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
    return Math.exp(logHigh)
  }
  // Prior out again. A look that says next to nothing keeps a large but finite variance.
  const precision = Math.max(1 / variance - 1 / prior.logSd ** 2, 1e-3)
  return {
    logMean, logSd: Math.sqrt(variance), median: quantile(0.5), low: quantile(0.1), high: quantile(0.9),
    evidence: { logValue: (logMean / variance - prior.logMean / prior.logSd ** 2) / precision, variance: 1 / precision },
  }
}

function checkLook(look: GoldLook, i: number): void {
  positive(look.mass, `looks[${i}].mass`, 'grams above zero')
  positive(look.grain, `looks[${i}].grain`, 'milligrams above zero')
  if (!(look.recovery > 0 && look.recovery <= 1)) throw new InputError(`looks[${i}].recovery`, look.recovery, 'a share above 0 and at most 1')
  if (!(look.relativeSd >= 0 && Number.isFinite(look.relativeSd))) throw new InputError(`looks[${i}].relativeSd`, look.relativeSd, 'zero or more')
  const value = Object.values(look.found)[0] as number
  if (!(value >= 0 && Number.isFinite(value))) throw new InputError(`looks[${i}].found`, value, 'g/t, zero or more')
}
