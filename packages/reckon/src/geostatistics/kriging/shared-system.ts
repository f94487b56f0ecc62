import { solveForward } from '../linear/cholesky.ts'
import { choleskyBlocked } from '../linear/cholesky-blocked.ts'
import { solveForward4 } from '../linear/interleaved.ts'
import { subtractProducts } from '../linear/subtract-products.ts'
import type { Neighbourhood } from './neighbourhood.ts'
import type { Problem } from './options.ts'

/**
 * What the targets of a tile have in common of their kriging systems.
 *
 * Core samples come first in every target's system, so their Cholesky factor is one for all; and for each extra sample the row of the
 * factor beside the core, and what it leaves of the covariances among extras (the Schur complement), are worked out once. A target
 * then only factors the few extras of its own.
 */
export class SharedSystem {
  /** Coordinates of core and extras, as `Neighbourhood.union` has them. */
  readonly xs: Float64Array
  readonly ys: Float64Array
  /** Factor of the core, row stride `core`. */
  readonly l: Float64Array
  core = 0
  extras = 0
  /** L^-1 (values, drift functions) over the core, one after another with stride `capacity`. */
  readonly known: Float64Array
  /** Rows beside the core, one per extra, row stride `core`. */
  readonly beside: Float64Array
  /** What the core leaves of the covariances among extras, row stride `extras`, lower triangle. */
  readonly left: Float64Array
  /** What the core leaves of the extras' values and drift functions: [column * capacity + extra]. */
  readonly open: Float64Array
  /** Products among the core's columns of `known`: drift with drift [i * p + j], drift with values [p * p + j]. */
  readonly products: Float64Array
  private readonly four: Float64Array

  /** @param capacity  most samples in a union */
  constructor(private readonly problem: Problem, readonly capacity: number) {
    const p = problem.drift.size
    const k = problem.neighbours
    this.xs = new Float64Array(capacity)
    this.ys = new Float64Array(capacity)
    this.l = new Float64Array(k * k)
    this.known = new Float64Array((1 + p) * capacity)
    this.beside = new Float64Array(capacity * k)
    this.left = new Float64Array(capacity * capacity)
    this.open = new Float64Array((1 + p) * capacity)
    this.products = new Float64Array(p * p + p)
    this.four = new Float64Array(4 * k)
  }

  /** @returns false when the core's covariance matrix is singular to working precision */
  prepare(near: Neighbourhood): boolean {
    const { covariance, samples, drift, mean } = this.problem
    const { xs, ys, l, known } = this
    const core = this.core = near.core
    const extras = this.extras = near.size - near.core
    for (let i = 0; i < near.size; i++) {
      const sample = near.union[i]!
      xs[i] = samples.xs[sample]!
      ys[i] = samples.ys[sample]!
      const into = i < core ? known : this.open
      const at = i < core ? i : i - core
      into[at] = samples.values[sample]! - mean
      // Less its value at one sample, which changes nothing where a constant is among the functions: local numbers stay small.
      for (let j = 0; j < drift.size; j++) into[(1 + j) * this.capacity + at] = drift.columns[j]![sample]! - (j === 0 ? 0 : drift.columns[j]![near.union[0]!]!)
    }
    for (let i = 0; i < core; i++) {
      covariance.fillStructured(l, i * core, 1, xs, ys, 0, i, xs[i]!, ys[i]!)
      l[i * core + i] = covariance.sill + samples.errors[near.union[i]!]!
    }
    if (choleskyBlocked(l, core) >= 0) return false
    for (let j = 0; j <= drift.size; j++) solveForward(l, core, core, known.subarray(j * this.capacity, j * this.capacity + core))
    this.multiply()
    if (extras > 0) this.prepareExtras(near)
    return true
  }

  private multiply(): void {
    const p = this.problem.drift.size
    const { known, products, core, capacity } = this
    for (let i = 0; i < p; i++) {
      for (let j = 0; j <= i; j++) products[i * p + j] = run(known, (1 + i) * capacity, known, (1 + j) * capacity, core)
      products[p * p + i] = run(known, (1 + i) * capacity, known, 0, core)
    }
  }

  private prepareExtras(near: Neighbourhood): void {
    const { covariance, samples, drift } = this.problem
    const { xs, ys, l, core, extras, beside, left, four, known, open, capacity } = this
    for (let from = 0; from < extras; from += 4) {
      for (let r = 0; r < 4; r++) {
        const extra = core + Math.min(from + r, extras - 1)
        covariance.fillStructured(four, r, 4, xs, ys, 0, core, xs[extra]!, ys[extra]!)
      }
      solveForward4(l, core, core, four)
      for (let r = 0; r < 4 && from + r < extras; r++) {
        for (let i = 0, at = (from + r) * core; i < core; i++) beside[at + i] = four[4 * i + r]!
      }
    }
    for (let a = 0; a < extras; a++) {
      covariance.fillStructured(left, a * extras, 1, xs, ys, core, a, xs[core + a]!, ys[core + a]!)
      left[a * extras + a] = covariance.sill + samples.errors[near.union[core + a]!]!
      for (let j = 0; j <= drift.size; j++) open[j * capacity + a]! -= run(known, j * capacity, beside, a * core, core)
    }
    subtractProducts(left, extras, beside, core, extras, 0, extras, core)
  }
}

/** sum of a[p + i] b[q + i], i below count */
export function run(a: Float64Array, p: number, b: Float64Array, q: number, count: number): number {
  let sum = 0
  for (let i = 0; i < count; i++) sum += a[p + i]! * b[q + i]!
  return sum
}
