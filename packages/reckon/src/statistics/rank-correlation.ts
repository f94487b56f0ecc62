import normalCdf from '@stdlib/stats-base-dists-normal-cdf'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { DegenerateError, InputError } from '../core/index.ts'
import { checkedConfidence } from './mean-limits.ts'
import { checkedLimits, surely } from './within-limits.ts'
import type { WithinLimits } from './within-limits.ts'

export interface RankCorrelation {
  /** Kendall's tau-b, -1 to 1: pairs in order less pairs against it, among those that can be told apart. */
  readonly tau: number
  readonly low: number
  readonly high: number
  readonly p: number
}

/** Fewer pairs of values than this give no interval. */
const fewest = 5

/**
 * Whether two things rise together, by ranks; values may be known only within limits.
 * @param x,y  as many of each, five or more
 * @returns tau-b; its range by Fieller, Hartley and Pearson's transform, rough for few values or many ties; its chance, two-sided, by the
 *   normal law with the variance of S under all orders of y
 * @throws DegenerateError("too few" | "nothing to compare"); InputError
 * Source: Kendall 1938; variance of general scores: Daniels, Biometrika 33, 1944 (from memory), with ties alone it is R's cor.test (checked);
 * interval: Fieller, Hartley and Pearson, Biometrika 44, 1957 (from memory).
 */
export function rankCorrelation(x: readonly WithinLimits[], y: readonly WithinLimits[], confidence: number): RankCorrelation {
  checkedConfidence(confidence)
  checkedLimits(x, 'x')
  checkedLimits(y, 'y')
  const n = x.length
  if (y.length !== n) throw new InputError('y', y.length, `as many as x (${n})`)
  if (n < fewest) throw new DegenerateError('too few', 'x', n, `${fewest} or more values`)
  const [a, b] = [scoresOf(x), scoresOf(y)]
  if (a.squares === 0 || b.squares === 0) throw new DegenerateError('nothing to compare', a.squares === 0 ? 'x' : 'y', n, 'values of which some are surely more than others')
  let both = 0
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) both += a.of[i]![j]! * b.of[i]![j]!
  const tau = Math.max(-1, Math.min(1, both / Math.sqrt(a.squares * b.squares)))
  const variance = 4 / (n * (n - 1) * (n - 2)) * (a.rows - a.squares) * (b.rows - b.squares) + 2 / (n * (n - 1)) * a.squares * b.squares
  const z = both / Math.sqrt(variance), half = normalQuantile((1 + confidence) / 2, 0, 1) * Math.sqrt(0.437 / (n - 4))
  const middle = Math.atanh(tau)
  return { tau, low: Math.tanh(middle - half), high: Math.tanh(middle + half), p: Math.min(1, 2 * normalCdf(-Math.abs(z), 0, 1)) }
}

/** Who is surely above whom, with the sums that the variance needs. */
function scoresOf(values: readonly WithinLimits[]): { readonly of: readonly (readonly number[])[], readonly squares: number, readonly rows: number } {
  const of = values.map(v => values.map(w => surely(v, w)))
  return {
    of, squares: of.reduce((sum, row) => sum + row.reduce<number>((s, score) => s + score * score, 0), 0),
    rows: of.reduce((sum, row) => sum + row.reduce<number>((s, score) => s + score, 0) ** 2, 0),
  }
}
