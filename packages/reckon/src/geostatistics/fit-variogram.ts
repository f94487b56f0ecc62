import { InputError, positive } from '../core/index.ts'
import { minimiseOnLine } from './linear/minimise-on-line.ts'
import type { Lag } from './lag.ts'
import { Covariance } from './covariance.ts'
import type { Structure, StructureType, VariogramModel } from './model.ts'

export interface FitOptions {
  readonly type: StructureType
  readonly smoothness?: 0.5 | 1.5 | 2.5
  /** A range to look at first; the whole span is searched all the same. */
  readonly start?: { readonly range?: number }
  /** 'pairs/distance2' (pairs over squared distance) unless given; or by pairs; or all alike. */
  readonly weights?: 'pairs/distance2' | 'pairs' | 'equal'
}

/** A fitted model: nugget + partialSill * shape(h / range). */
export interface VariogramFit {
  readonly nugget: number
  readonly partialSill: number
  readonly range: number
  /** Sum over lags of weight * (gamma - model)^2. */
  readonly weightedSse: number
  readonly model: VariogramModel
  /** 'lower' or 'upper' when the best range is at an end of the searched span: the lags do not fix it. */
  readonly rangeAtBound?: 'lower' | 'upper'
}

/** The range is searched from this share of the shortest lag distance to this multiple of the longest. */
const SPAN = { lower: 0.25, upper: 20 }
/** Points of the first look at the range, evenly spaced in its logarithm: about 3 % apart. */
const LOOKS = 240

/**
 * Fits nugget, partial sill and range of a one-structure model to an experimental variogram by weighted least squares.
 *
 * For a given range the best nugget and partial sill (both >= 0) are a linear problem solved exactly; what is left is a function
 * of the range alone, which is looked at over its whole span and then refined at each of its hollows. So the result is the
 * minimum over the span, not the nearest one to a starting value.
 * @param lags  bins with pairs and distance above zero; not modified
 * @returns the fit; all-zero gammas give nugget 0, partial sill 0 and a range that means nothing (`rangeAtBound`)
 * @throws InputError when a lag is not finite, has no pairs or distance, or when fewer than 3 lags are given (3 unknowns)
 * Accuracy: range to about 1e-7 relative, nugget and sill likewise.
 * Source: Cressie, N. (1985) Fitting variogram models by weighted least squares, Math. Geol. 17: 563-586, doi:10.1007/BF01032109;
 * Golub, G. and Pereyra, V. (1973) variable projection, SIAM J. Numer. Anal. 10: 413-432, doi:10.1137/0710036.
 */
export function fitVariogram(lags: readonly Lag[], options: FitOptions): VariogramFit {
  checkLags(lags)
  const weights = lags.map(weightOf(options.weights ?? 'pairs/distance2'))
  const distances = lags.map(lag => lag.distance)
  const lower = Math.log(SPAN.lower * Math.min(...distances))
  const upper = Math.log(SPAN.upper * Math.max(...distances))
  const looks = Array.from({ length: LOOKS + 1 }, (_, i) => lower + (upper - lower) * i / LOOKS)
  const start = options.start?.range
  if (start !== undefined) looks.push(Math.min(Math.max(Math.log(positive(start, 'start.range')), lower), upper))
  const at = (logRange: number) => project(lags, weights, structureOf(options, Math.exp(logRange)))
  const best = minimiseOnLine(logRange => at(logRange).weightedSse, looks)
  const { nugget, partialSill, weightedSse } = at(best)
  const range = Math.exp(best)
  const flat = lags.every(lag => lag.gamma === 0)
  const edge = 1e-6 * (upper - lower)
  const bound = best - lower < edge || flat ? 'lower' : upper - best < edge ? 'upper' : undefined
  return {
    nugget, partialSill, range, weightedSse,
    model: { nugget, structures: [{ ...structureOf(options, range), partialSill }] },
    ...(bound !== undefined && { rangeAtBound: bound }),
  }
}

function checkLags(lags: readonly Lag[]): void {
  lags.forEach((lag, i) => {
    positive(lag.pairs, `lags[${i}].pairs`, 'a count above zero')
    positive(lag.distance, `lags[${i}].distance`, 'a distance above zero')
    if (!(lag.gamma >= 0 && Number.isFinite(lag.gamma))) throw new InputError(`lags[${i}].gamma`, lag.gamma, 'a number at or above zero')
  })
  if (lags.length < 3) throw new InputError('lags', lags.length, 'at least 3 lags for 3 unknowns')
}

const weightOf = (kind: NonNullable<FitOptions['weights']>) => (lag: Lag): number =>
  kind === 'equal' ? 1 : kind === 'pairs' ? lag.pairs : lag.pairs / (lag.distance * lag.distance)

const structureOf = (options: FitOptions, range: number): Structure =>
  ({ type: options.type, partialSill: 1, range, ...(options.smoothness !== undefined && { smoothness: options.smoothness }) })

/** Best nugget and partial sill, both >= 0, for a shape of unit sill, with the weighted squares that are left. */
function project(lags: readonly Lag[], weights: readonly number[], unit: Structure) {
  const covariance = new Covariance({ nugget: 0, structures: [unit] })
  const shape = lags.map(lag => covariance.gamma(lag.distance, 0))
  let w = 0, ws = 0, wss = 0, wg = 0, wsg = 0
  lags.forEach((lag, i) => {
    const weight = weights[i]!
    w += weight
    ws += weight * shape[i]!
    wss += weight * shape[i]! ** 2
    wg += weight * lag.gamma
    wsg += weight * shape[i]! * lag.gamma
  })
  const candidates: [number, number][] = [[wg / w, 0], [0, wsg / wss]]
  // The determinant as a sum of squares, because w wss - ws^2 cancels when the shape is nearly flat.
  const centre = ws / w
  const spread = lags.reduce((sum, _, i) => sum + weights[i]! * (shape[i]! - centre) ** 2, 0)
  if (spread > 1e-14 * wss) {
    const partialSill = lags.reduce((sum, lag, i) => sum + weights[i]! * (shape[i]! - centre) * lag.gamma, 0) / spread
    const nugget = (wg - partialSill * ws) / w
    if (partialSill >= 0 && nugget >= 0) candidates.unshift([nugget, partialSill])
  }
  let best = { nugget: 0, partialSill: 0, weightedSse: Infinity }
  for (const [nugget, partialSill] of candidates) {
    const weightedSse = lags.reduce((sum, lag, i) => sum + weights[i]! * (lag.gamma - nugget - partialSill * shape[i]!) ** 2, 0)
    if (weightedSse < best.weightedSse) best = { nugget, partialSill, weightedSse }
  }
  return best
}
