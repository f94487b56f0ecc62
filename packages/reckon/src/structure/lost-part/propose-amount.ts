import type { Draws } from '../../core/index.ts'
import normalCdf from '@stdlib/stats-base-dists-normal-cdf'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import type { AmountPrior } from './slip-amount.ts'

/** What one marker says of a slip of length r in a given direction: offset = share × r, give or take sigma. */
export interface Pull { readonly offset: number, readonly share: number, readonly sigma: number }

export interface Proposed {
  readonly amount: number
  /** Log of how much this one counts: the evidence's density over the density it was drawn with, a constant apart. */
  readonly logWeight: number
}

const halfLog2Pi = 0.5 * Math.log(2 * Math.PI)
/** Log density of a marker's offset. */
export const logDensity = ({ offset, sigma }: Pull, expected: number): number => -Math.log(sigma) - halfLog2Pi - ((offset - expected) / sigma) ** 2 / 2

/**
 * Draws a slip's length for one direction.
 *
 * From the markers when they tell it more sharply than the prior does (their joint normal distribution, cut off at zero), else from the prior.
 * Either way the weight makes the draw stand for prior times markers, and summed over draws for how well that direction agrees with them.
 */
export function proposeAmount(pulls: readonly Pull[], prior: AmountPrior, draws: Draws): Proposed {
  let [precision, pulled] = [0, 0]
  for (const { offset, share, sigma } of pulls) {
    precision += (share / sigma) ** 2
    pulled += share * offset / (sigma * sigma)
  }
  const sigma = 1 / Math.sqrt(precision)
  if (!(sigma < prior.spread)) {
    const amount = prior.draw(draws)
    return { amount, logWeight: pulls.reduce((sum, pull) => sum + logDensity(pull, pull.share * amount), 0) }
  }
  const mean = pulled / precision
  const above = normalCdf(mean / sigma, 0, 1) // chance of a length above zero
  if (!(above > Number.MIN_VALUE / Number.EPSILON)) return { amount: prior.median, logWeight: -Infinity }
  // Drawn by the lower tail, where small chances keep their digits.
  const amount = mean - sigma * normalQuantile(above * (1 - draws.uniform()) * (1 - Number.EPSILON), 0, 1)
  if (!(amount > 0)) return { amount: prior.median, logWeight: -Infinity }
  const agree = pulls.reduce((sum, pull) => sum + logDensity(pull, pull.share * mean), 0)
  return { amount, logWeight: agree + halfLog2Pi + Math.log(sigma) + Math.log(above) + prior.logDensity(amount) }
}
