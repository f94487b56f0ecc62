import { InputError } from '../core/index.ts'

/** A value known only within limits: [v, v] when it was measured, [-Infinity, limit] when nothing was found above a limit. */
export type WithinLimits = readonly [low: number, high: number]

/** -1 or 1 when one of two is surely less or more, 0 when they are equal or their limits overlap. */
export const surely = (a: WithinLimits, b: WithinLimits): -1 | 0 | 1 => {
  if (a[0] === a[1] && b[0] === b[1]) return a[0] < b[0] ? -1 : a[0] > b[0] ? 1 : 0
  return a[1] <= b[0] ? -1 : b[1] <= a[0] ? 1 : 0
}

export function checkedLimits(values: readonly WithinLimits[], field: string): readonly WithinLimits[] {
  values.forEach(([low, high], i) => {
    if (!(low <= high) || low === Infinity || high === -Infinity) throw new InputError(`${field}[${i}]`, [low, high], 'a lower limit that is not above the upper one')
  })
  return values
}

/**
 * Ranks of values known within limits: how many are surely less, plus half of those that can't be told apart, plus a half. Without limits they are
 * the usual mid-ranks.
 * Source: Gehan, Biometrika 52, 1965, 203 (scores; from memory); the form as ranks is arithmetic.
 */
export const limitedRanks = (values: readonly WithinLimits[]): readonly number[] =>
  values.map(a => (values.reduce((score, b) => score + surely(a, b), 0) + values.length + 1) / 2)
