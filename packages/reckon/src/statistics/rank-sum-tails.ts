import normalCdf from '@stdlib/stats-base-dists-normal-cdf'

/** Up to this many values all ways of choosing are counted; it takes milliseconds. */
const exactUpTo = 60

export interface RankSumTails {
  /** Chance of a sum as low, or lower, when every choice of as many values is as likely. */
  readonly pLess: number
  readonly pGreater: number
  /** Every choice was counted; else the normal approximation by the variance of the scores themselves, with continuity. */
  readonly exact: boolean
}

/**
 * How odd the sum of the first `chosen` of some scores is among all ways to choose as many of them. Ranks, mid-ranks and ranks of values known
 * only within limits are all scores; halves are exact.
 * @param scores  whole or half numbers
 */
export function rankSumTails(scores: readonly number[], chosen: number): RankSumTails {
  const n = scores.length, sum = scores.slice(0, chosen).reduce((a, b) => a + b, 0)
  if (n <= exactUpTo) {
    const [pLess, pGreater] = countedTails(scores, chosen, sum)
    return { pLess, pGreater, exact: true }
  }
  const mean = scores.reduce((a, b) => a + b, 0) / n, spread = scores.reduce((s, score) => s + (score - mean) ** 2, 0)
  const sigma = Math.sqrt(chosen * (n - chosen) / (n * (n - 1)) * spread), off = sum - chosen * mean
  return { pLess: normalCdf((off + 0.5) / sigma, 0, 1), pGreater: normalCdf(-(off - 0.5) / sigma, 0, 1), exact: false }
}

/** Counts the ways to choose by their sum. Scores are doubled, so that halves are whole, and moved up, so that none is below zero. */
function countedTails(scores: readonly number[], chosen: number, sum: number): [number, number] {
  const least = Math.min(...scores), doubled = scores.map(score => Math.round((score - least) * 2))
  const top = doubled.reduce((a, b) => a + b, 0)
  const ways = Array.from({ length: chosen + 1 }, () => new Float64Array(top + 1))
  ways[0]![0] = 1
  doubled.forEach((score, i) => {
    for (let k = Math.min(chosen, i + 1); k >= 1; k--) {
      const [to, from] = [ways[k]!, ways[k - 1]!]
      for (let s = top; s >= score; s--) to[s]! += from[s - score]!
    }
  })
  const seen = Math.round((sum - chosen * least) * 2)
  let [below, at, above] = [0, 0, 0]
  ways[chosen]!.forEach((count, s) => {
    if (s < seen) below += count
    else if (s === seen) at += count
    else above += count
  })
  const total = below + at + above
  return [(below + at) / total, (above + at) / total]
}
