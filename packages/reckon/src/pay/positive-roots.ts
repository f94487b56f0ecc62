/**
 * Every root s of sum over t of c_t exp(t s), ascending: the logarithms of the positive roots of a polynomial.
 *
 * By Rolle's theorem, between two positive roots of p lies one of (x^-k p)'. With k between two coefficients of opposite sign that
 * derivative has one change of sign fewer, so the search ends after as many steps as there are changes, and every interval
 * it leaves holds at most one root. Nothing is scanned, so no root can fall between the steps of a scan.
 * @param coefficients  finite, c_0 first
 */
export function logarithmsOfPositiveRoots(coefficients: readonly number[]): readonly number[] {
  const terms = coefficients.flatMap((c, t) => c === 0 ? [] : [{ t, c }])
  const change = terms.findIndex((term, i) => i > 0 && Math.sign(term.c) !== Math.sign(terms[i - 1]?.c ?? 0))
  const [first, last, before, after] = [terms[0], terms.at(-1), terms[change - 1], terms[change]]
  if (change < 0 || !first || !last || !before || !after) return []
  const middle = (before.t + after.t) / 2
  const turns = logarithmsOfPositiveRoots(coefficients.map((c, t) => (t - middle) * c))
  const signs = [Math.sign(first.c), ...turns.map(turn => signAt(coefficients, turn)), Math.sign(last.c)]
  return [-Infinity, ...turns].flatMap((low, i) => {
    const high = turns[i] ?? Infinity
    const [left = 0, right = 0] = [signs[i], signs[i + 1]]
    const inside = left * right < 0 ? [bisect(coefficients, low, high, left)] : []
    // A root that only touches zero sits on the turn itself.
    return right === 0 && high !== Infinity ? [...inside, high] : inside
  })
}

/** The sign of the sum at s; 0 when what is left is no more than rounding. */
function signAt(coefficients: readonly number[], s: number): number {
  const { sum, size } = sumAt(coefficients, s)
  return Math.abs(sum) <= 4 * coefficients.length * Number.EPSILON * size ? 0 : Math.sign(sum)
}

/** The sum at s and the sum of its terms' sizes, both scaled by the largest power so that they can't overflow. */
function sumAt(coefficients: readonly number[], s: number): { sum: number, size: number } {
  const degree = coefficients.length - 1
  let [sum, size] = [0, 0]
  for (const [t, c] of coefficients.entries()) {
    const term = c * Math.exp(s > 0 ? (t - degree) * s : t * s)
    sum += term
    size += Math.abs(term)
  }
  return { sum, size }
}

function bisect(coefficients: readonly number[], from: number, to: number, left: number): number {
  let low = from === -Infinity ? reach(to === Infinity ? 0 : to, -1, s => signAt(coefficients, s) === left) : from
  let high = to === Infinity ? reach(from === -Infinity ? 0 : from, 1, s => signAt(coefficients, s) === -left) : to
  for (;;) {
    const middle = low + (high - low) / 2
    if (middle <= low || middle >= high) return middle
    const sign = Math.sign(sumAt(coefficients, middle).sum)
    if (sign === 0) return middle
    if (sign === left) low = middle; else high = middle
  }
}

/** The first point, stepping twice as far each time, where the test holds. */
function reach(from: number, way: 1 | -1, holds: (s: number) => boolean): number {
  let step = 0.5
  while (!holds(from + way * step) && step < 1e6) step *= 2
  return from + way * step
}
