/** A figure in doubt: its middle, with one in ten below `low` and one in ten above `high`. A figure held for certain has all three alike. */
export interface Spread { readonly median: number, readonly low: number, readonly high: number }

/** 1.2816: one in ten of a standard normal lies beyond it. */
export const decile = 1.2815515655446004

/**
 * The value of a positive figure that goes with a standard normal number: lognormal through its deciles, on each side of its median by itself.
 * @param spread  0 < low <= median <= high; a figure that can be nought or less is given back as its median
 */
export function positiveAt({ median, low, high }: Spread, normal: number): number {
  if (!(low > 0 && low < high)) return median
  return median * Math.exp(normal * Math.log(normal < 0 ? median / low : high / median) / decile)
}

/**
 * The value of a share of one that goes with a standard normal number: normal on the logit, on each side of its median by itself.
 * A spread that reaches 0 or 1 is taken straight between its deciles and held between 0 and 1.
 */
export function shareAt({ median, low, high }: Spread, normal: number): number {
  if (!(low < high)) return Math.min(1, Math.max(0, median))
  if (low <= 0 || high >= 1 || median <= 0 || median >= 1) {
    return Math.min(1, Math.max(0, median + normal * (normal < 0 ? median - low : high - median) / decile))
  }
  const logit = (p: number) => Math.log(p / (1 - p))
  const z = logit(median) + normal * (normal < 0 ? logit(median) - logit(low) : logit(high) - logit(median)) / decile
  return 1 / (1 + Math.exp(-z))
}
