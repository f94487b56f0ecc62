import { DegenerateError, finite, InputError, positive } from '../core/index.ts'
import { checkLook, logLikelihood } from './gold-look.ts'
import type { GoldLook } from './gold-look.ts'
import type { GradePrior } from './sample-belief.ts'

/** A pan and an assay of one bag. The pan's own recovery is what is asked for: it is not read. */
export interface PanAndAssay { readonly pan: GoldLook, readonly assay: GoldLook }

export interface PanCalibration {
  /** Share of the gold that pans keep: middle and 80 % range. */
  readonly share: number
  readonly low: number
  readonly high: number
  /** Relative standard deviation of the share. */
  readonly relativeSd: number
  readonly pairs: number
}

/** Shares that are weighed against each other, and grades under each bag. */
const [shares, grades] = [45, 140]
const [leastShare, mostShare] = [0.1, 1]
/** How far from the prior's middle a grade may lie, in its standard deviations. */
const reach = 3.5

/**
 * What share of the gold pans keep, from bags that were both panned and assayed and from pans salted with counted grains.
 *
 * Each bag's own grade is unknown and is summed over, so that a limit counts by its likelihood and a lean charge of coarse gold, which mostly reads low,
 * does not make pans look better than they are. Any share from 0.1 to 1 is as likely beforehand.
 * @param pairs  a pan's `relativeSd` is that of its weighing or its colours, without recovery
 * @throws DegenerateError("nothing to go by"); InputError
 * Source: the looks' likelihoods as in `sampleBelief`; salted grains are binomial.
 */
export function panCalibration(pairs: readonly PanAndAssay[], prior: GradePrior, salted?: { readonly found: number, readonly seeded: number }): PanCalibration {
  if (pairs.length === 0 && (salted?.seeded ?? 0) === 0) throw new DegenerateError('nothing to go by', 'pairs', 0, 'a bag panned and assayed, or salted pans')
  pairs.forEach(({ pan, assay }, i) => { checkLook({ ...pan, recovery: 1 }, 2 * i); checkLook(assay, 2 * i + 1) })
  finite(prior.logMean, 'prior.logMean')
  positive(prior.logSd, 'prior.logSd')
  if (salted && !(Number.isInteger(salted.found) && salted.found >= 0 && salted.found <= salted.seeded)) throw new InputError('salted.found', salted.found, `a whole number from 0 to ${salted.seeded}`)
  const at = Array.from({ length: shares }, (_, i) => leastShare + (mostShare - leastShare) * (i + 0.5) / shares)
  const step = 2 * reach * prior.logSd / (grades - 1)
  const logGrades = Array.from({ length: grades }, (_, i) => prior.logMean - reach * prior.logSd + i * step)
  const logPrior = logGrades.map(g => -(((g - prior.logMean) / prior.logSd) ** 2) / 2)
  const assayed = pairs.map(({ assay }) => logGrades.map((g, k) => logLikelihood(assay, g) + logPrior[k]!))
  const log = at.map((share) => {
    const ofPairs = pairs.reduce((sum, { pan }, i) => sum + logSum(logGrades.map((g, k) => assayed[i]![k]! + panLikelihood(pan, share, g))), 0)
    return ofPairs + (salted ? salted.found * Math.log(share) + (salted.seeded - salted.found) * Math.log1p(-Math.min(share, 1 - 1e-9)) : 0)
  })
  const best = Math.max(...log), weight = log.map(v => Math.exp(v - best)), total = weight.reduce((a, b) => a + b, 0)
  const mean = weight.reduce((s, w, i) => s + w * at[i]!, 0) / total
  const variance = weight.reduce((s, w, i) => s + w * (at[i]! - mean) ** 2, 0) / total
  const quantile = (p: number) => {
    let reached = 0
    const i = weight.findIndex((w) => { reached += w / total; return reached >= p })
    return at[i]! + (p - reached + weight[i]! / total) / (weight[i]! / total) * (mostShare - leastShare) / shares - (mostShare - leastShare) / shares / 2
  }
  return { share: quantile(0.5), low: quantile(0.1), high: quantile(0.9), relativeSd: Math.sqrt(variance) / mean, pairs: pairs.length }
}

/** A pan's likelihood when it keeps `share`. What it found is fixed: a count that hangs on the share must not carry the share's own logarithm twice. */
function panLikelihood(pan: GoldLook, share: number, logGrade: number): number {
  if (!('grade' in pan.found)) return logLikelihood({ ...pan, recovery: share }, logGrade)
  // The grade as the pan showed it, seen as if all gold were kept from ground so much leaner.
  return logLikelihood({ ...pan, recovery: 1 }, logGrade + Math.log(share))
}

function logSum(values: readonly number[]): number {
  const top = Math.max(...values)
  return top + Math.log(values.reduce((sum, v) => sum + Math.exp(v - top), 0))
}

/**
 * How many more bags panned and assayed would bring the doubt of the share down to `wanted`, all of them as telling as those there are.
 * Doubt falls as one over the root of the number.
 */
export function pairsFor({ pairs, relativeSd }: Pick<PanCalibration, 'pairs' | 'relativeSd'>, wanted: number): number {
  positive(wanted, 'wanted')
  if (pairs === 0) throw new DegenerateError('nothing to go by', 'pairs', 0, 'a bag panned and assayed')
  return Math.max(0, Math.ceil(pairs * (relativeSd / wanted) ** 2) - pairs)
}
