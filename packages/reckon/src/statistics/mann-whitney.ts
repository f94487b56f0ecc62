import normalCdf from '@stdlib/stats-base-dists-normal-cdf'
import { DegenerateError } from '../core/index.ts'
import { checkedValues } from './moments.ts'
import { ranked, tieSum } from './ranks.ts'

export interface MannWhitney {
  /** Pairs (x, y) with x above y, equal ones counting half. */
  readonly W: number
  /** Chance, if both groups are alike, of a W as far from the middle either way. */
  readonly p: number
  /** Chance of a W as high, or higher: small when x runs higher. */
  readonly pGreater: number
  readonly pLess: number
  /** Every way of splitting the values was counted; else the normal approximation with corrections for ties and continuity. */
  readonly exact: boolean
}

/** Up to this many values all splits are counted; it takes milliseconds. */
const exactUpTo = 60

/**
 * Do two groups come from one population, by ranks.
 * @param x,y one or more values each
 * @throws DegenerateError("too few" | "all equal"); InputError
 * Source: Mann and Whitney 1947; the exact chances count all splits of the (mid-)ranks, so ties are exact too. Checked against Hollander and Wolfe 1973, p. 69.
 */
export function mannWhitney(x: readonly number[], y: readonly number[]): MannWhitney {
  checkedValues(x, 'groups[0]')
  checkedValues(y, 'groups[1]')
  const { ranks, ties } = ranked([...x, ...y])
  const n = ranks.length
  if (ties.length === 1 && ties[0] === n) throw new DegenerateError('all equal', 'groups', n, 'values that differ')
  const rankSum = ranks.slice(0, x.length).reduce((a, b) => a + b, 0)
  const W = rankSum - x.length * (x.length + 1) / 2
  const [pLess, pGreater] = n <= exactUpTo ? exactTails(ranks, x.length, rankSum) : normalTails(W, x.length, y.length, ties)
  return { W, p: Math.min(1, 2 * Math.min(pLess, pGreater)), pGreater, pLess, exact: n <= exactUpTo }
}

/** Counts the ways to choose the x's ranks by their sum. Ranks are doubled, so that halves are whole. */
function exactTails(ranks: readonly number[], chosen: number, rankSum: number): [number, number] {
  const doubled = ranks.map(rank => Math.round(rank * 2))
  const top = doubled.reduce((a, b) => a + b, 0)
  const ways = Array.from({ length: chosen + 1 }, () => new Float64Array(top + 1))
  ways[0]![0] = 1
  doubled.forEach((rank, i) => {
    for (let k = Math.min(chosen, i + 1); k >= 1; k--) {
      const [with_, without] = [ways[k]!, ways[k - 1]!]
      for (let sum = top; sum >= rank; sum--) with_[sum]! += without[sum - rank]!
    }
  })
  const counts = ways[chosen]!
  const seen = Math.round(rankSum * 2)
  let [below, at, above] = [0, 0, 0]
  counts.forEach((count, sum) => {
    if (sum < seen) below += count
    else if (sum === seen) at += count
    else above += count
  })
  const total = below + at + above
  return [(below + at) / total, (above + at) / total]
}

function normalTails(W: number, m: number, n: number, ties: readonly number[]): [number, number] {
  const N = m + n
  const sigma = Math.sqrt(m * n / 12 * (N + 1 - tieSum(ties) / (N * (N - 1))))
  const middle = m * n / 2
  return [normalCdf((W - middle + 0.5) / sigma, 0, 1), normalCdf(-(W - middle - 0.5) / sigma, 0, 1)]
}
