import { DegenerateError, InputError } from '../core/index.ts'

/** Two determinations that ought to agree, in one unit. */
export type Pair = readonly [number, number]

export interface DuplicateMeasures {
  /** Average coefficient of variation, per cent. */
  readonly cvAveragePct: number
  /** Half absolute relative difference of each pair, |a - b|/(a + b), as a share; 0 where both are 0. */
  readonly hard: readonly number[]
  /** Standard deviation of one determination about its pair's mean, in the values' unit. */
  readonly withinSd: number
  /** Standard deviation of ln of one determination; undefined when a value is 0. */
  readonly logSd: number | undefined
}

/** Refuses pairs that are not two numbers, zero or more; returns them. */
export function checkedPairs(pairs: readonly Pair[]): readonly Pair[] {
  if (pairs.length === 0) throw new DegenerateError('too few', 'pairs', 0, 'one or more pairs')
  pairs.forEach((pair, i) => pair.forEach((value, k) => {
    if (!(value >= 0 && Number.isFinite(value))) throw new InputError(`pairs[${i}][${k}]`, value, 'a number, zero or more')
  }))
  return pairs
}

const hardOf = ([a, b]: Pair): number => a + b === 0 ? 0 : Math.abs(a - b) / (a + b)

/**
 * How well duplicates agree.
 * @throws DegenerateError("too few"); InputError
 * Source: Abzalov, Explor. Min. Geol. 17, 2008, 131 (from memory): CV = 100 sqrt((2/N) sum ((a - b)/(a + b))²).
 */
export function duplicateMeasures(pairs: readonly Pair[]): DuplicateMeasures {
  const hard = checkedPairs(pairs).map(hardOf)
  const n = pairs.length
  const half = (differences: readonly number[]) => Math.sqrt(differences.reduce((sum, d) => sum + d * d, 0) / (2 * n))
  return {
    cvAveragePct: 100 * Math.sqrt(2 / n * hard.reduce((sum, h) => sum + h * h, 0)), hard, withinSd: half(pairs.map(([a, b]) => a - b)),
    logSd: pairs.every(([a, b]) => a > 0 && b > 0) ? half(pairs.map(([a, b]) => Math.log(a) - Math.log(b))) : undefined,
  }
}
