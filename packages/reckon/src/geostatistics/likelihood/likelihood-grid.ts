import chiSquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile'
import type { VariogramModel } from '../model.ts'
import type { FieldLikelihood } from './field-likelihood.ts'
import { logPrior } from './prior.ts'
import type { VariogramPrior } from './prior.ts'

/** One candidate variogram and its share of belief. */
export interface ModelNode {
  readonly model: VariogramModel
  readonly sill: number
  readonly nugget: number
  readonly partialSill: number
  readonly nuggetShare: number
  readonly range: number
  /** Log of likelihood times prior, up to a constant. */
  readonly logBelief: number
  readonly weight: number
}

/** Steps of the grid: ranges evenly in the logarithm, nugget shares evenly in the middle of their cells, sills see below. */
const RANGES = 15
const SHARES = 10
/** Sills per range and share: where the samples are exact, the middles of this many slices of equal belief. */
const SLICES = 8
/** With error variances, or a prior on the sill: this many over the peak in log sill, so many of its standard deviations apart. */
const SILLS = 7
const APART = 0.9
/** The peak is looked for at these logarithms beside the samples' variance, then more closely at this distance. */
const LOOKS = [-4.2, -2.8, -1.4, 0, 1.4, 2.8]
const CLOSER = 0.4
/** A peak is taken to be no narrower and no wider than this, in log sill: beyond it three points do not tell. */
const NARROWEST = 0.05
const WIDEST = 1

export interface GridTask {
  readonly likelihood: FieldLikelihood
  readonly make: (sill: number, nuggetShare: number, range: number) => VariogramModel
  readonly prior: VariogramPrior
  readonly span: { readonly lower: number, readonly upper: number }
  readonly noisy: boolean
  /** Plain variance of the values. */
  readonly variance: number
}

type Draft = Omit<ModelNode, 'weight'> & { readonly logWeight: number }

/** All nodes, most believable first; those below a millionth of the first are left out. */
export function gridOf(task: GridTask): ModelNode[] {
  const { lower, upper } = task.span
  const ranges = lower === upper ? [lower] : Array.from({ length: RANGES }, (_, i) => lower * (upper / lower) ** (i / (RANGES - 1)))
  const shares = Array.from({ length: SHARES }, (_, i) => (i + 0.5) / SHARES)
  const slice = task.noisy || task.prior.sill !== undefined ? bySteps : bySlices
  const drafts = ranges.flatMap((range, i) => {
    // The two ends of the span stand for half a step each.
    const step = ranges.length > 1 && (i === 0 || i === ranges.length - 1) ? Math.log(0.5) : 0
    return shares.flatMap(share => slice(task, share, range).map(draft => ({ ...draft, logWeight: draft.logWeight + step })))
  })
  const most = drafts.reduce((max, draft) => Math.max(max, draft.logWeight), -Infinity)
  const kept = drafts.filter(draft => draft.logWeight > most + Math.log(1e-6)).sort((a, b) => b.logWeight - a.logWeight)
  const total = kept.reduce((sum, draft) => sum + Math.exp(draft.logWeight - most), 0)
  return kept.map(({ logWeight, ...node }) => ({ ...node, weight: Math.exp(logWeight - most) / total }))
}

function draftOf({ make }: GridTask, sill: number, nuggetShare: number, range: number, logBelief: number, logWeight: number): Draft {
  const model = make(sill, nuggetShare, range)
  return { model, sill, nugget: sill * nuggetShare, partialSill: sill * (1 - nuggetShare), nuggetShare, range, logBelief, logWeight }
}

/**
 * Exact samples, no prior on the sill: squares / sill is chi-square with `freedom` degrees for a given shape, whatever the sill.
 * So the sill integrates out in closed form, and its slices of equal belief are known.
 */
function bySlices(task: GridTask, share: number, range: number): Draft[] {
  const profile = task.likelihood.profile(task.make(1, share, range))
  const prior = logPrior(task.prior, { sill: profile.sill, range, nuggetShare: share })
  return Array.from({ length: SLICES }, (_, i) => {
    const sill = profile.squares / chiSquareQuantile((i + 0.5) / SLICES, profile.freedom)
    return draftOf(task, sill, share, range, profile.logLikelihood + prior, profile.logLikelihood + prior)
  })
}

/** No closed form: steps over the peak in log sill, each with the width it stands for. */
function bySteps(task: GridTask, share: number, range: number): Draft[] {
  const ofSill = logLikelihoodOfSill(task, share, range)
  const belief = (logSill: number) => ofSill(Math.exp(logSill)) + logPrior(task.prior, { sill: Math.exp(logSill), range, nuggetShare: share })
  const { centre, spread } = peakOf(belief, Math.log(task.prior.sill?.median ?? task.variance), Math.log(task.variance))
  return Array.from({ length: SILLS }, (_, i) => {
    const logSill = centre + (i - (SILLS - 1) / 2) * APART * spread
    const value = belief(logSill)
    return draftOf(task, Math.exp(logSill), share, range, value, value + Math.log(spread))
  })
}

/** For exact samples one factorisation does for all sills. */
function logLikelihoodOfSill({ likelihood, make, noisy }: GridTask, share: number, range: number): (sill: number) => number {
  if (noisy) return sill => likelihood.of(make(sill, share, range))
  const { sill: best, logLikelihood, freedom } = likelihood.profile(make(1, share, range))
  return sill => logLikelihood - 0.5 * freedom * (Math.log(sill / best) + best / sill - 1)
}

/** Place and width (as of a normal density) of a function's peak, by looks and then a parabola through three points about it. */
function peakOf(f: (x: number) => number, ...starts: readonly number[]): { centre: number, spread: number } {
  let best = { x: 0, value: -Infinity }
  for (const start of starts) {
    for (const look of LOOKS) {
      const value = f(start + look)
      if (value > best.value) best = { x: start + look, value }
    }
  }
  let centre = best.x
  let spread = WIDEST
  for (const h of [2 * CLOSER, CLOSER]) {
    const [left, middle, right] = [f(centre - h), f(centre), f(centre + h)]
    const curvature = (left - 2 * middle + right) / (h * h)
    const slope = (right - left) / (2 * h)
    // Where it is not bent downwards a step uphill is taken instead.
    centre += curvature < 0 ? Math.min(Math.max(-slope / curvature, -2 * h), 2 * h) : Math.sign(slope) * h
    spread = curvature < 0 ? Math.min(Math.max(1 / Math.sqrt(-curvature), NARROWEST), WIDEST) : WIDEST
  }
  return { centre, spread }
}
