import betaQuantile from '@stdlib/stats-base-dists-beta-quantile'
import chiSquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { InputError } from '../core/index.ts'
import type { Range } from '../core/index.ts'
import { checkedConfidence } from './mean-limits.ts'

function checkedCount(count: number, field: string): number {
  if (!(Number.isInteger(count) && count >= 0)) throw new InputError(field, count, 'a whole number, zero or more')
  return count
}

function checkedShare(found: number, tried: number): void {
  checkedCount(tried, 'tried')
  if (tried === 0) throw new InputError('tried', tried, 'one or more')
  if (checkedCount(found, 'found') > tried) throw new InputError('found', found, `at most ${tried}`)
}

/**
 * Range of a share from `found` of `tried`: Wilson's interval, which behaves for few tries and at 0 and 1.
 * Source: Wilson, JASA 22, 1927, 209 (from memory).
 */
export function wilsonRange(found: number, tried: number, confidence: number): Range {
  checkedShare(found, tried)
  const z = normalQuantile((1 + checkedConfidence(confidence)) / 2, 0, 1)
  const share = found / tried
  const scale = 1 + z * z / tried
  const middle = (share + z * z / (2 * tried)) / scale
  const half = z * Math.sqrt(share * (1 - share) / tried + z * z / (4 * tried * tried)) / scale
  return { low: found === 0 ? 0 : Math.max(0, middle - half), high: found === tried ? 1 : Math.min(1, middle + half), confidence }
}

/**
 * The same by Jeffreys' prior: quantiles of Beta(found + 1/2, tried - found + 1/2), closed at 0 and 1.
 * Source: Brown, Cai and DasGupta, Statist. Sci. 16, 2001, 101 (from memory).
 */
export function jeffreysRange(found: number, tried: number, confidence: number): Range {
  checkedShare(found, tried)
  const tail = (1 - checkedConfidence(confidence)) / 2
  const [a, b] = [found + 0.5, tried - found + 0.5]
  return { low: found === 0 ? 0 : betaQuantile(tail, a, b), high: found === tried ? 1 : betaQuantile(1 - tail, a, b), confidence }
}

/**
 * Exact range of a Poisson mean from one count: how many gold grains such pans hold on average when this one showed `count`.
 * Source: Garwood, Biometrika 28, 1936, 437 (from memory).
 */
export function poissonRange(count: number, confidence: number): Range {
  checkedCount(count, 'count')
  const tail = (1 - checkedConfidence(confidence)) / 2
  return { low: count === 0 ? 0 : chiSquareQuantile(tail, 2 * count) / 2, high: chiSquareQuantile(1 - tail, 2 * count + 2) / 2, confidence }
}

/** Exact one-sided upper limit of a Poisson mean: for nothing seen, -ln(1 - confidence), 3.0 at 95 %. */
export function poissonUpper(count: number, confidence: number): number {
  checkedCount(count, 'count')
  return chiSquareQuantile(checkedConfidence(confidence), 2 * count + 2) / 2
}
