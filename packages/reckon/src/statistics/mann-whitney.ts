import { DegenerateError } from '../core/index.ts'
import { checkedValues } from './moments.ts'
import { rankSumTails } from './rank-sum-tails.ts'
import { ranked } from './ranks.ts'

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
  const { pLess, pGreater, exact } = rankSumTails(ranks, x.length)
  return { W, p: Math.min(1, 2 * Math.min(pLess, pGreater)), pGreater, pLess, exact }
}
