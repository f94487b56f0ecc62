import { InputError } from '../core/index.ts'

/**
 * Sichel's factor gamma(V, n): the arithmetic mean of a lognormal population is estimated without bias by exp(mean log) times it.
 *
 * gamma = 1 + sum over r of (n-1)^r V^r / (2^r r! (n-1)(n+1)...(n+2r-3)).
 * @param V  mean squared deviation of the natural logs, with n below (not n - 1: a trap in some texts), zero or more
 * @param n  number of values, two or more
 * Accuracy: rounding; all terms are positive.
 * Source: Sichel 1966; the same as Finney 1941 (both from memory, checked against a published MVUE mean).
 */
export function sichelFactor(V: number, n: number): number {
  if (!(V >= 0 && Number.isFinite(V))) throw new InputError('V', V, 'zero or more')
  if (!(Number.isInteger(n) && n >= 2)) throw new InputError('n', n, 'a whole number, two or more')
  let term = 1
  let sum = 1
  for (let r = 1; term > sum * Number.EPSILON / 4; r++) {
    term *= (n - 1) * V / (2 * r * (n + 2 * r - 3))
    sum += term
  }
  return sum
}

/** Finney's g(t): the same series in t = s²/2 with the n - 1 variance s². Zero or more. */
export const finneyFactor = (t: number, n: number): number => sichelFactor(2 * t * (n - 1) / n, n)
