import { InputError } from '../../core/index.ts'

/** Chance that a heading meets the vein within so many metres: the share of draws. A draw that never meets it counts as Infinity. */
export const chanceWithin = (lengths: readonly number[], within: number): number =>
  lengths.reduce((count, length) => count + (length <= within ? 1 : 0), 0) / lengths.length

/**
 * The least length that meets the vein in so large a share of draws; Infinity when none does.
 * @param share in (0, 1]
 */
export function lengthFor(lengths: readonly number[], share: number): number {
  if (!(share > 0 && share <= 1)) throw new InputError('share', share, 'above 0, at most 1')
  const sorted = Float64Array.from(lengths).sort() // a typed array sorts by value, Infinity last
  return sorted[Math.ceil(share * sorted.length - 1e-9) - 1] ?? Infinity
}
