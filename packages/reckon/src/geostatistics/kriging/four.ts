import { fillToSupport } from '../support.ts'
import type { Problem } from './options.ts'

/** Fills the covariances of four targets (the last repeated where fewer are left) with `count` samples, interleaved. */
export function fillFour(
  problem: Problem, order: Int32Array, from: number, to: number, xs: Float64Array, ys: Float64Array, count: number, c: Float64Array,
): void {
  const { covariance, support, targets } = problem
  for (let r = 0; r < 4; r++) {
    const t = order[Math.min(from + r, to - 1)]!
    fillToSupport(covariance, support, c, r, 4, xs, ys, 0, count, targets.xs[t]!, targets.ys[t]!)
  }
}

/** sum of a[k] c[4 k + r] */
export function strided(a: Float64Array, c: Float64Array, r: number, n: number): number {
  let sum = 0
  for (let k = 0, o = r; k < n; k++, o += 4) sum += a[k]! * c[o]!
  return sum
}
