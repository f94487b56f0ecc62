import type { Answer, AnswerRange } from './answer.ts'

type Given<T> = Pick<Answer<T>, 'id' | 'sentence' | 'value' | 'method'> & Partial<Answer<T>>

/** An answer from what is particular to it; lists not given are empty, entries behind it are named once. */
export function buildAnswer<T>(given: Given<T>): Answer<T> {
  const { range, unit, ...rest } = given
  return {
    sources: [], parts: [], assumed: [], cautions: [],
    ...rest,
    ...(range ? { range } : {}),
    ...(unit === undefined ? {} : { unit }),
    from: [...new Set(given.from ?? [])],
  }
}

/** The middle 80 % of equally likely outcomes. */
export function rangeOf(outcomes: ArrayLike<number>, because: readonly string[] = [], confidence = 0.8): AnswerRange {
  const sorted = Float64Array.from(outcomes).sort()
  const tail = (1 - confidence) / 2
  return { low: quantile(sorted, tail), high: quantile(sorted, 1 - tail), confidence, because }
}

/** Linear interpolation between order statistics (Hyndman and Fan, Am. Statist. 50, 1996, 361, type 7; from memory). */
export function quantile(sorted: ArrayLike<number>, p: number): number {
  const at = (sorted.length - 1) * p
  const low = Math.floor(at)
  const below = sorted[low] ?? Number.NaN
  return below + (at - low) * ((sorted[low + 1] ?? below) - below)
}

export function mean(values: ArrayLike<number>): number {
  let sum = 0
  for (let i = 0; i < values.length; i++) sum += values[i]!
  return sum / values.length
}
