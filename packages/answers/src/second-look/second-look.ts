/** Something written down that does not fit the rest. It is never changed or left out; the crew looks again and decides. */
export interface SecondLook {
  readonly sort: 'survey' | 'assumption' | 'place' | 'vein' | 'width' | 'mass' | 'blank' | 'standard' | 'bags' | 'bag number'
  /** What is odd, against what, and what it may be. */
  readonly sentence: string
  /** Entries to look at, the likeliest first. */
  readonly entries: readonly string[]
  /** How far off, in standard deviations of what would be usual. */
  readonly times: number
  /** What to do about it. */
  readonly todo: string
}

/** The middle of some numbers; NaN when there are none. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const half = sorted.length / 2
  return sorted.length % 2 === 1 ? sorted[Math.floor(half)]! : (sorted[half - 1]! + sorted[half]!) / 2
}

/** Standard deviation from the median distance to the median, as a normal would have it; unmoved by a few wild values. */
export function robustSd(values: readonly number[]): number {
  const middle = median(values)
  return 1.482602 * median(values.map(v => Math.abs(v - middle)))
}
