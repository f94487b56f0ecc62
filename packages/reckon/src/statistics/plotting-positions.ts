import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { checkedValues } from './moments.ts'

/** A value that was measured, or only known to lie below a limit. */
export interface LimitedValue { readonly value: number, readonly below: boolean }

export interface PlottedValue {
  /** Which of the values given, by its place in the list. */
  readonly of: number
  readonly value: number
  /** Share of all values that lie below it. */
  readonly share: number
  /** The same in standard deviations of a normal law. */
  readonly score: number
}

/**
 * Where measured values stand on a probability plot when some others are only known to lie below limits: a straight line on logs speaks for a
 * lognormal law, a break in it for two kinds of ore.
 *
 * A value under a limit takes its place among those below the limit without being drawn (the product-limit estimate turned round); each measured value
 * stands in the middle of its step. Without limits this is (i - 1/2)/n.
 * @returns the measured values, lowest first
 * @throws DegenerateError("too few") for no values; InputError
 * Source: Kaplan and Meier, JASA 53, 1958, 457, for values under limits as in Helsel, Statistics for Censored Environmental Data, 2012 (both from memory).
 */
export function plottingPositions(values: readonly LimitedValue[]): readonly PlottedValue[] {
  checkedValues(values.map(v => v.value), 'values')
  const order = values.map((v, of) => ({ ...v, of })).sort((a, b) => b.value - a.value || Number(a.below) - Number(b.below) || b.of - a.of)
  const plotted: PlottedValue[] = []
  let above = 1 // share not yet passed, from the top
  order.forEach(({ value, below, of }, i) => {
    if (below) return
    const atRisk = order.length - i, next = above * (1 - 1 / atRisk), share = (above + next) / 2
    plotted.push({ of, value, share, score: normalQuantile(share, 0, 1) })
    above = next
  })
  return plotted.reverse()
}
