import { DegenerateError, finite, positive } from '../../core/index.ts'
import { driftOf } from '../drift.ts'
import type { KrigingKind } from '../drift.ts'
import { minimiseInBox } from '../linear/minimise-in-box.ts'
import type { Sample, StructureType, VariogramModel } from '../model.ts'
import { gatherSamples } from '../samples.ts'
import type { Samples } from '../samples.ts'
import { FieldLikelihood } from './field-likelihood.ts'
import type { LikelihoodMethod } from './field-likelihood.ts'
import { gridOf } from './likelihood-grid.ts'
import type { ModelNode } from './likelihood-grid.ts'
import { checkPrior, logPrior } from './prior.ts'
import type { VariogramPrior } from './prior.ts'

export interface LikelihoodOptions {
  readonly type: StructureType
  readonly smoothness?: 0.5 | 1.5 | 2.5
  /** 'reml' unless given: not biased by the coefficients of the drift having been estimated from the same samples. */
  readonly method?: LikelihoodMethod
  /** What the mean is: 'simple' (known, `mean`), 'ordinary' (unknown constant; unless given), 'universal' (linear in x and y). */
  readonly kind?: KrigingKind
  readonly mean?: number
  readonly errorVariance?: readonly number[]
  /** Hold the range at this; otherwise it is searched from a quarter of the middle nearest-sample distance to three times the diagonal. */
  readonly range?: number
  readonly prior?: VariogramPrior
}

/** A variogram fitted to samples by likelihood, with what else the samples allow. */
export interface LikelihoodFit {
  /** The likeliest model (with a prior: the most believable). */
  readonly model: VariogramModel
  readonly nugget: number
  readonly partialSill: number
  readonly range: number
  /** Log likelihood of that model, up to a constant common to all models of these samples. */
  readonly logLikelihood: number
  /** Models on a grid, with their share of belief; shares sum to 1. What a variogram is not known to goes on from here. */
  readonly nodes: readonly ModelNode[]
  /** Set when the best range is at an end of what was searched: the samples do not fix it. */
  readonly rangeAtBound?: 'lower' | 'upper'
}

/**
 * Fits nugget, partial sill and range to the samples themselves, by (restricted) maximum likelihood, with the doubt about all three.
 *
 * No bins and no pairs: every sample counts as the model says it should, which for a few dozen samples is worth far more than a curve
 * through a variogram of a few pairs. The nodes weight each model by likelihood times prior; without a prior they are flat in the
 * logarithms of sill and range and in the nugget's share, over the range searched.
 * @param points  rows of [x, y, value], about Gaussian; not modified
 * @throws InputError as `krige`, or naming `prior...` or `range`; DegenerateError 'too few' below two samples more than the drift has
 *   coefficients; 'no variance' when all values are what the drift says
 * Cost: 500 to 1,500 factorisations of an n x n matrix, 2,500 to 3,500 with error variances: a second for about 150 samples, 100 with.
 * Source: Diggle, P. J. and Ribeiro, P. J. (2007) Model-based geostatistics, ch. 5 and 7; see `FieldLikelihood`.
 */
export function fitLikelihood(points: readonly Sample[], options: LikelihoodOptions): LikelihoodFit {
  const { method = 'reml', kind = 'ordinary', prior = {} } = options
  checkPrior(prior)
  const samples = gatherSamples(points, options.errorVariance)
  const likelihood = new FieldLikelihood(samples, driftOf(kind, samples, 0), kind === 'simple' ? finite(options.mean ?? 0, 'mean') : 0, method)
  checkSpread(samples, likelihood)
  const span = options.range === undefined ? rangeSpan(samples) : { lower: positive(options.range, 'range'), upper: options.range }
  const make = (sill: number, nuggetShare: number, range: number): VariogramModel => ({
    nugget: sill * nuggetShare,
    structures: [{
      type: options.type, partialSill: sill * (1 - nuggetShare), range, ...(options.smoothness !== undefined && { smoothness: options.smoothness }),
    }],
  })
  const noisy = samples.errors.some(error => error > 0)
  const nodes = gridOf({ likelihood, make, prior, span, noisy, variance: varianceOf(samples) })
  const tops = topsAlongRange(nodes).map(start => refine(likelihood, make, prior, span, start, noisy))
  const best = tops.reduce((a, b) => b.belief > a.belief ? b : a)
  const model = make(best.sill, best.nuggetShare, best.range)
  const edge = 1e-4 * Math.log(span.upper / span.lower)
  const bound = Math.log(best.range / span.lower) < edge ? 'lower' : Math.log(span.upper / best.range) < edge ? 'upper' : undefined
  return {
    model, nugget: model.nugget, partialSill: model.structures[0]!.partialSill, range: best.range, logLikelihood: likelihood.of(model), nodes,
    ...(bound !== undefined && options.range === undefined && { rangeAtBound: bound }),
  }
}

/** The likelihood has several tops along the range, most of all for spherical models: this many are climbed. */
const CLIMBS = 3

/** The best node of each range that is better than the ranges next to it; the best few of those. */
function topsAlongRange(nodes: readonly ModelNode[]): ModelNode[] {
  const perRange = new Map<number, ModelNode>()
  for (const node of nodes) {
    const best = perRange.get(node.range)
    if (best === undefined || node.logBelief > best.logBelief) perRange.set(node.range, node)
  }
  const line = [...perRange.values()].sort((a, b) => a.range - b.range)
  const belief = (i: number) => line[i]?.logBelief ?? -Infinity
  return line.filter((_, i) => belief(i) >= belief(i - 1) && belief(i) >= belief(i + 1)).sort((a, b) => b.logBelief - a.logBelief).slice(0, CLIMBS)
}

/** A node near a top, walked up to it. */
function refine(
  likelihood: FieldLikelihood, make: (sill: number, share: number, range: number) => VariogramModel, prior: VariogramPrior,
  span: { lower: number, upper: number }, start: ModelNode, noisy: boolean,
): { sill: number, nuggetShare: number, range: number, belief: number } {
  const free = !noisy && prior.sill === undefined
  const at = ([share, logRange, logSill]: readonly number[]) => {
    const range = Math.exp(logRange!)
    const sill = free ? likelihood.profile(make(1, share!, range)).sill : Math.exp(logSill!)
    return { sill, nuggetShare: share!, range }
  }
  const cost = (x: readonly number[]) => {
    const place = at(x)
    const belief = likelihood.of(make(place.sill, place.nuggetShare, place.range)) + logPrior(prior, place)
    return Number.isFinite(belief) ? -belief : 1e300
  }
  const logSill = Math.log(start.sill)
  const box = {
    lower: [0, Math.log(span.lower), ...(free ? [] : [logSill - 5])],
    upper: [1, Math.log(span.upper), ...(free ? [] : [logSill + 5])],
  }
  const found = minimiseInBox(cost, [start.nuggetShare, Math.log(start.range), ...(free ? [] : [logSill])], [0.05, 0.2, ...(free ? [] : [0.2])], box)
  return { ...at(found), belief: -cost(found) }
}

function varianceOf({ values, count }: Samples): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / count
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (count - 1)
}

/** Values that are all what the drift says have no variogram. */
function checkSpread(samples: Samples, likelihood: FieldLikelihood): void {
  const size = samples.values.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
  const { squares } = likelihood.profile({ nugget: 1, structures: [] })
  if (!(squares > (1e-12 * size) ** 2 * samples.count)) throw new DegenerateError('no variance', 'points', samples.count, 'values that differ from the drift')
}

function rangeSpan({ xs, ys, count }: Samples): { lower: number, upper: number } {
  const nearest = Array.from({ length: count }, (_, i) => {
    let least = Infinity
    for (let j = 0; j < count; j++) if (j !== i) least = Math.min(least, Math.hypot(xs[i]! - xs[j]!, ys[i]! - ys[j]!))
    return least
  }).sort((a, b) => a - b)
  const across = Math.hypot(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys))
  return { lower: nearest[count >> 1]! / 4, upper: 3 * across }
}
