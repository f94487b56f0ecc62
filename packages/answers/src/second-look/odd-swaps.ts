import type { SwapSuspicion } from '../lab/shapes.ts'
import type { SecondLook } from './second-look.ts'

/** Bags that their neighbours say were changed over. */
export const oddSwaps = (swaps: readonly SwapSuspicion[]): readonly SecondLook[] => swaps.map(({ ratio, answer }) => ({
  sort: 'bags', entries: answer.from, times: Math.sqrt(2 * Math.log(ratio)), sentence: answer.sentence,
  todo: 'See the bags\' way on paper; where a reject was kept, have both run again, else cut both places again.',
}))
