import { InputError } from '../core/index.ts'
import { checkedValues } from './moments.ts'

/**
 * The value below which a share of the sample lies, by straight lines between the ordered values (R's type 7).
 * @param share in [0, 1]
 * @throws DegenerateError("too few") for no values; InputError
 * Source: Hyndman and Fan, The American Statistician 50, 1996, 361 (from memory).
 */
export const quantile = (values: readonly number[], share: number): number => quantiles(values, [share])[0]!

/** Several quantiles with one sorting. */
export function quantiles(values: readonly number[], shares: readonly number[]): readonly number[] {
  const sorted = [...checkedValues(values, 'values')].sort((a, b) => a - b)
  return shares.map((share) => {
    if (!(share >= 0 && share <= 1)) throw new InputError('share', share, '0 to 1')
    const at = (sorted.length - 1) * share
    const below = Math.floor(at)
    const low = sorted[below]!
    return low + (at - below) * (sorted[Math.min(below + 1, sorted.length - 1)]! - low)
  })
}
