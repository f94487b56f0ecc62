import gammaQuantile from '@stdlib/stats-base-dists-gamma-quantile'
import type { Range } from '../core/index.ts'
import { checkedConfidence, poissonUpper } from '../statistics/index.ts'

/** Grains of one mass, and how many were counted. */
export interface CountedGrains { readonly count: number, readonly mgEach: number }

/**
 * Range of the mean mass of gold that such portions hold, from grains counted by size class; mg.
 *
 * One class: Garwood's exact range. Several: a gamma law with the mean and variance of the weighted count, widened by one grain of the largest class.
 * Nothing counted: from 0 to the one-sided limit by the largest class.
 * @param classes one or more, with mgEach above zero
 * Source: Fay and Feuer, Statistics in Medicine 16, 1997, 791 (from memory).
 */
export function weightedCountRange(classes: readonly CountedGrains[], confidence: number): Range {
  const tail = (1 - checkedConfidence(confidence)) / 2
  const mass = classes.reduce((sum, c) => sum + c.count * c.mgEach, 0)
  const squares = classes.reduce((sum, c) => sum + c.count * c.mgEach ** 2, 0)
  const largest = Math.max(...classes.map(c => c.mgEach))
  if (mass === 0) return { low: 0, high: largest * poissonUpper(0, confidence), confidence }
  const upper = { mass: mass + largest, squares: squares + largest ** 2 }
  return {
    low: gammaQuantile(tail, mass ** 2 / squares, mass / squares),
    high: gammaQuantile(1 - tail, upper.mass ** 2 / upper.squares, upper.mass / upper.squares), confidence,
  }
}
