import { InputError, positive } from '../../core/index.ts'
import type { Draws } from '../../core/index.ts'

/** What is thought of the length of a slip before anything tells: one in ten is below `low`, one in ten above `high`. Equal ones are taken as known. */
export interface SlipAmount { readonly low: number, readonly high: number }

/** The same as a lognormal distribution. */
export interface AmountPrior {
  readonly median: number
  /** One standard deviation in length, about: what a marker's own doubt is compared with. */
  readonly spread: number
  draw(draws: Draws): number
  /** Log of the density per unit of length. Only where `spread` is above zero. */
  logDensity(amount: number): number
}

const tenth = 1.2815515655446004 // upper tenth of the standard normal

/** @throws InputError for limits that are not above zero or the wrong way round */
export function amountPrior({ low, high }: SlipAmount, field: string): AmountPrior {
  positive(low, `${field}.low`)
  positive(high, `${field}.high`)
  if (high < low) throw new InputError(`${field}.high`, high, `at least ${field}.low`)
  const middle = (Math.log(low) + Math.log(high)) / 2
  const sigma = (Math.log(high) - Math.log(low)) / (2 * tenth)
  return {
    median: Math.exp(middle), spread: (high - low) / (2 * tenth),
    draw: draws => Math.exp(middle + (sigma === 0 ? 0 : sigma * draws.normal())),
    logDensity: amount => -Math.log(amount * sigma) - 0.5 * Math.log(2 * Math.PI) - ((Math.log(amount) - middle) / sigma) ** 2 / 2,
  }
}
