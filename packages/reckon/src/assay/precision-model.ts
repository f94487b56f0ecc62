import { quantile } from '../statistics/index.ts'
import { checkedPairs } from './duplicates.ts'
import type { Pair } from './duplicates.ts'

/** Upper quartile of the standard normal law. */
const quartile = 0.6744897501960817

/** From medians and means to standard deviations of one determination, for normal errors. */
export const robustFactors = {
  /** Median |difference| of pairs to standard deviation: 1/(sqrt 2 x 0.67449) = 1.04836. */
  medianDifference: 1 / (Math.SQRT2 * quartile),
  /** Median of standard deviations to their root mean square. */
  medianSd: 1 / quartile,
  /** Root mean square difference of pairs to standard deviation. */
  rmsDifference: Math.SQRT1_2,
} as const

/** Standard deviation of a determination at grade c: s0 + k c. */
export interface PrecisionModel {
  readonly s0: number
  readonly k: number
  /** Groups of pairs that the line was laid through. */
  readonly groups: number
  /** Precision at a grade, per cent: two standard deviations over the grade. */
  readonly precisionPct: (grade: number) => number
}

const groupSize = 11
/** A line through fewer groups than this says more of chance than of the laboratory. */
const fewestGroups = 3

/**
 * How the error of a determination grows with grade, from duplicates: pairs in order of their mean, in groups of eleven; the median difference of
 * each group against its mean grade.
 * @returns undefined with fewer than 33 pairs
 * @throws InputError
 * Source: Thompson and Howarth; constants as in Stanley and Lawie 2007 (read); groups of eleven from memory.
 */
export function precisionModel(pairs: readonly Pair[]): PrecisionModel | undefined {
  const sorted = checkedPairs(pairs).map(([a, b]) => ({ mean: (a + b) / 2, difference: Math.abs(a - b) })).sort((p, q) => p.mean - q.mean)
  const groups = Math.floor(sorted.length / groupSize)
  if (groups < fewestGroups) return undefined
  const points = Array.from({ length: groups }, (_, g) => {
    // What does not fill a group joins the last one.
    const members = sorted.slice(g * groupSize, g === groups - 1 ? undefined : (g + 1) * groupSize)
    const typical = quantile(members.map(m => m.difference), 0.5)
    return { grade: members.reduce((sum, m) => sum + m.mean, 0) / members.length, sd: robustFactors.medianDifference * typical }
  })
  const middle = points.reduce((sum, p) => sum + p.grade, 0) / groups
  const height = points.reduce((sum, p) => sum + p.sd, 0) / groups
  const squares = points.reduce((sum, p) => sum + (p.grade - middle) ** 2, 0)
  const k = squares === 0 ? 0 : points.reduce((sum, p) => sum + (p.grade - middle) * (p.sd - height), 0) / squares
  const s0 = height - k * middle
  return { s0, k, groups, precisionPct: grade => 200 * (s0 / grade + k) }
}
