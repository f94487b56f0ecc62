import chiSquareCdf from '@stdlib/stats-base-dists-chisquare-cdf'
import { DegenerateError } from '../core/index.ts'
import { checkedValues } from './moments.ts'
import { ranked, tieSum } from './ranks.ts'

export interface KruskalWallis { readonly H: number, readonly df: number, readonly p: number }

/**
 * Do several groups come from one population, by ranks: tells whether grades differ between wall, vein and stringer, whatever their distribution.
 * @param groups two or more, none empty, not all values equal
 * @returns H corrected for ties, and its chance by chi-square (rough for groups below five values)
 * @throws DegenerateError("too few" | "all equal"); InputError
 * Source: Kruskal and Wallis 1952; checked against Hollander and Wolfe 1973, p. 116.
 */
export function kruskalWallis(groups: readonly (readonly number[])[]): KruskalWallis {
  if (groups.length < 2) throw new DegenerateError('too few', 'groups', groups.length, 'two or more groups')
  groups.forEach((group, i) => checkedValues(group, `groups[${i}]`))
  const all = groups.flat()
  const n = all.length
  const { ranks, ties } = ranked(all)
  const correction = 1 - tieSum(ties) / (n ** 3 - n)
  if (!(correction > 0)) throw new DegenerateError('all equal', 'groups', n, 'values that differ')
  let at = 0
  const sum = groups.reduce((total, group) => {
    const rankSum = ranks.slice(at, at + group.length).reduce((a, b) => a + b, 0)
    at += group.length
    return total + (rankSum - group.length * (n + 1) / 2) ** 2 / group.length
  }, 0)
  const H = 12 / (n * (n + 1)) * sum / correction
  const df = groups.length - 1
  return { H, df, p: Math.max(0, 1 - chiSquareCdf(H, df)) }
}
