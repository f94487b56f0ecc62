import normalCdf from '@stdlib/stats-base-dists-normal-cdf'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { DegenerateError, InputError } from '../core/index.ts'
import { checkedValues, mean } from './moments.ts'

/** Value of a polynomial, constant first. */
const poly = (coefficients: readonly number[], x: number): number => coefficients.reduceRight((sum, c) => sum * x + c, 0)

const last = [0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056]
const nextToLast = [0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633]
const small = { gamma: [-2.273, 0.459], mean: [0.544, -0.39978, 0.025054, -6.714e-4], logSd: [1.3822, -0.77857, 0.062767, -0.0020322] }
const large = { mean: [-1.5861, -0.31082, -0.083751, 0.0038915], logSd: [-0.4803, -0.082676, 0.0030302] }

/** Weights of the upper half of the ordered values, largest value first. */
function weightsFor(n: number): readonly number[] {
  if (n === 3) return [Math.SQRT1_2]
  const half = Math.floor(n / 2)
  const scores = Array.from({ length: half }, (_, i) => -normalQuantile((i + 1 - 0.375) / (n + 0.25), 0, 1))
  const squares = 2 * scores.reduce((sum, m) => sum + m * m, 0)
  const root = Math.sqrt(squares)
  const x = 1 / Math.sqrt(n)
  const first = poly(last, x) + scores[0]! / root
  if (n <= 5) {
    const scale = Math.sqrt((squares - 2 * scores[0]! ** 2) / (1 - 2 * first ** 2))
    return scores.map((m, i) => i === 0 ? first : m / scale)
  }
  const second = poly(nextToLast, x) + scores[1]! / root
  const scale = Math.sqrt((squares - 2 * scores[0]! ** 2 - 2 * scores[1]! ** 2) / (1 - 2 * first ** 2 - 2 * second ** 2))
  return scores.map((m, i) => i === 0 ? first : i === 1 ? second : m / scale)
}

/**
 * Are values normal? On logs: can the lognormal methods be believed?
 * @param values 3 to 5,000, not all equal
 * @returns W near 1 for normal values; p small when they are not
 * @throws DegenerateError("too few" | "all equal"); InputError
 * Source: Royston, Applied Statistics 44, 1995, algorithm AS R94 (from memory); checked against W and p published for USEPA 1992's chromium values.
 */
export function shapiroWilk(values: readonly number[]): { readonly W: number, readonly p: number } {
  const n = checkedValues(values, 'values', 3).length
  if (n > 5000) throw new InputError('values', n, 'at most 5,000 values')
  const sorted = [...values].sort((a, b) => a - b)
  const middle = mean(sorted)
  const squares = sorted.reduce((sum, v) => sum + (v - middle) ** 2, 0)
  const range = sorted[n - 1]! - sorted[0]!
  if (range <= 4 * Number.EPSILON * Math.max(Math.abs(sorted[0]!), Math.abs(sorted[n - 1]!))) throw new DegenerateError('all equal', 'values', n, 'values that differ')
  const fit = weightsFor(n).reduce((sum, weight, i) => sum + weight * (sorted[n - 1 - i]! - sorted[i]!), 0)
  const W = Math.min(1, fit * fit / squares)
  return { W, p: chanceOf(W, n) }
}

function chanceOf(W: number, n: number): number {
  if (n === 3) return Math.max(0, 6 / Math.PI * (Math.asin(Math.sqrt(W)) - Math.asin(Math.sqrt(0.75))))
  if (W === 1) return 1
  const y = Math.log(1 - W)
  if (n <= 11) {
    const gamma = poly(small.gamma, n)
    if (y >= gamma) return 0
    return 1 - normalCdf(-Math.log(gamma - y), poly(small.mean, n), Math.exp(poly(small.logSd, n)))
  }
  return 1 - normalCdf(y, poly(large.mean, Math.log(n)), Math.exp(poly(large.logSd, Math.log(n))))
}
