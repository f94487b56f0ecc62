import { positive } from '../../core/index.ts'

/** One outcome of an option as money over time. */
export interface CashCase {
  /** Weeks that the work takes. */
  readonly weeks: number
  /** Money out at the start, and evenly over the weeks. */
  readonly once: number
  readonly running: number
  /** Money in, in so many equal lots: each is sent when its share of the work is done and paid `delay` weeks later. */
  readonly income: number
  readonly lots: number
  readonly delay: number
}

/**
 * Money in hand at the end of each week, from 0 (before the work begins, when what is bought once has been paid) to `last`.
 *
 * Income from a charge larger than the gold is negative and is paid like the rest.
 * @param last  weeks to follow; money that moves later does not show
 * Source: plain accounting.
 */
export function cashLine({ weeks, once, running, income, lots, delay }: CashCase, last: number): Float64Array {
  positive(lots, 'lots')
  const line = new Float64Array(Math.max(0, Math.ceil(last)) + 1)
  for (let week = 0; week < line.length; week++) {
    const out = once + running * (weeks > 0 ? Math.min(1, week / weeks) : 1)
    let paid = 0
    for (let lot = 1; lot <= lots; lot++) if (weeks * lot / lots + delay <= week + 1e-9 * (1 + week)) paid++
    line[week] = income * paid / lots - out
  }
  return line
}

/** Weeks after which nothing more moves. */
export const cashWeeks = ({ weeks, delay }: Pick<CashCase, 'weeks' | 'delay'>): number => Math.ceil(weeks + delay - 1e-9)

/** The deepest hole: the least money in hand at the end of any week, as a positive sum to be found; 0 when it is never below nothing. */
export const deepestHole = (line: ArrayLike<number>): number => {
  let least = 0
  for (let week = 0; week < line.length; week++) least = Math.min(least, line[week]!)
  return -least
}

/** What each week adds, the first at its beginning: the flows whose present value and rate can be asked for. */
export const weeklyFlows = (line: ArrayLike<number>): readonly number[] =>
  Array.from({ length: line.length }, (_, week) => line[week]! - (week > 0 ? line[week - 1]! : 0))
