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
/** With error variances (or a prior on the sill): this many, evenly in the logarithm, from a share to a multiple of the sample variance. */
const SILLS = 13
const SILL_SPAN = { lower: 1 / 30, upper: 8 }
/** A prior on the sill widens that to this many of its factors either way. */
const PRIOR_FACTORS = 2.5

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

function bySteps(task: GridTask, share: number, range: number): Draft[] {
  const { variance, prior: { sill: about } } = task
  const reach = about === undefined ? 1 : about.factor ** PRIOR_FACTORS
  const lower = Math.min(SILL_SPAN.lower * variance, (about?.median ?? Infinity) / reach)
  const upper = Math.max(SILL_SPAN.upper * variance, (about?.median ?? 0) * reach)
  return Array.from({ length: SILLS }, (_, i) => {
    const sill = lower * (upper / lower) ** (i / (SILLS - 1))
    const belief = task.likelihood.of(task.make(sill, share, range)) + logPrior(task.prior, { sill, range, nuggetShare: share })
    return draftOf(task, sill, share, range, belief, belief)
  })
}
