import { quantiles } from '../../statistics/index.ts'

/** How much the evidence says: where the lost part is, only on which hand, or not even that. */
export type Tells = 'where' | 'which hand' | 'nothing'

export interface Separation {
  /** Along the vein's normal; the 80 % range from `low` to `high`. */
  readonly low: number
  readonly median: number
  readonly high: number
  /** Share of draws on the side of the normal. */
  readonly chanceUp: number
  readonly tells: Tells
}

/** An 80 % range wider than so many times its middle does not tell the distance: '5 m, four in five between 3 and 8' does, 'between 2 and 9' does not. */
export const tooWide = 1

/**
 * What a family of continuations amounts to.
 *
 * 'nothing' when the 80 % range takes in both hands; 'which hand' when it is wider than `tooWide` times its middle.
 * @param apart  separation of each draw, square to the vein along its normal
 */
export function whatItTells(apart: readonly number[], times = tooWide): Separation {
  const [low, median, high] = quantiles(apart, [0.1, 0.5, 0.9]) as [number, number, number]
  const tells: Tells = low * high <= 0 ? 'nothing' : high - low > times * Math.abs(median) ? 'which hand' : 'where'
  return { low, median, high, chanceUp: apart.filter(value => value > 0).length / apart.length, tells }
}
