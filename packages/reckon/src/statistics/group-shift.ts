import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { DegenerateError } from '../core/index.ts'
import { checkedConfidence } from './mean-limits.ts'
import { rankSumTails } from './rank-sum-tails.ts'
import { checkedLimits, limitedRanks } from './within-limits.ts'
import type { WithinLimits } from './within-limits.ts'

export interface GroupShift {
  /** By how much x runs above y: the median of all differences x - y. Undefined when the limits leave it open. */
  readonly shift: number | undefined
  /** Infinite where values known only within limits leave it open. */
  readonly low: number
  readonly high: number
  /** Chance, if both come from one population, of groups as far apart either way. */
  readonly p: number
  readonly exact: boolean
}

/** Up to this many values the exact law of the rank sum gives the interval. */
const exactUpTo = 60

/**
 * By how much one group runs above another, with an interval, whatever their distribution; values may be known only within limits.
 *
 * The interval holds the one that would come out if all values were known, so it is never too narrow for want of them.
 * @param x,y  one or more values each; logs, for ratios
 * @throws DegenerateError("too few" | "nothing to compare"); InputError
 * Source: Hodges and Lehmann 1963; interval as in R's wilcox.test (R 4.2, stats), checked against it; limits by Gehan's comparison.
 */
export function groupShift(x: readonly WithinLimits[], y: readonly WithinLimits[], confidence: number): GroupShift {
  checkedConfidence(confidence)
  checkedLimits(x, 'x')
  checkedLimits(y, 'y')
  if (x.length === 0 || y.length === 0) throw new DegenerateError('too few', x.length === 0 ? 'x' : 'y', 0, 'one or more values')
  const ranks = limitedRanks([...x, ...y])
  if (ranks.every(rank => rank === ranks[0])) throw new DegenerateError('nothing to compare', 'x', x.length, 'values of which some are surely more than others')
  const tails = rankSumTails(ranks, x.length)
  const lows = x.flatMap(a => y.map(b => a[0] - b[1])).sort((a, b) => a - b)
  const highs = x.flatMap(a => y.map(b => a[1] - b[0])).sort((a, b) => a - b)
  const cut = Math.max(1, lowerRank(x.length, y.length, (1 - confidence) / 2)), pairs = lows.length
  const [low, high] = [middle(lows), middle(highs)]
  return {
    shift: low === high ? low : undefined, low: lows[cut - 1]!, high: highs[pairs - cut]!, exact: tails.exact,
    p: Math.min(1, 2 * Math.min(tails.pLess, tails.pGreater)),
  }
}

const middle = (sorted: readonly number[]): number => {
  const half = (sorted.length - 1) / 2, [a, b] = [sorted[Math.floor(half)]!, sorted[Math.ceil(half)]!]
  return a === b ? a : (a + b) / 2
}

/** The least w with P(W <= w) >= tail, W the count of pairs with x above y, when both are alike and no two are equal. */
function lowerRank(m: number, n: number, tail: number): number {
  if (m + n > exactUpTo) return Math.round(m * n / 2 + normalQuantile(tail, 0, 1) * Math.sqrt(m * n * (m + n + 1) / 12))
  // counts[k][w]: choices of k of the values so far with that many pairs; adding the i-th value as an x puts it above i - k y's.
  const top = m * n, counts = Array.from({ length: m + 1 }, () => new Float64Array(top + 1))
  counts[0]![0] = 1
  for (let i = 0; i < m + n; i++) {
    for (let k = Math.min(m, i + 1); k >= 1; k--) {
      const above = i - (k - 1)
      if (above > n) continue
      for (let w = top; w >= above; w--) counts[k]![w]! += counts[k - 1]![w - above]!
    }
  }
  const total = counts[m]!.reduce((a, b) => a + b, 0)
  let sum = 0
  for (let w = 0; w <= top; w++) {
    sum += counts[m]![w]!
    if (sum / total >= tail) return w
  }
  return top
}
