import { fillToSupport } from '../support.ts'
import type { Problem } from './options.ts'
import { run } from './shared-system.ts'
import type { SharedSystem } from './shared-system.ts'

/** A pivot of the drift's small system counts as zero below this share of its own diagonal; the plain way then decides. */
const DEPENDENT = 1e-12

/**
 * The last step for one target: its own extras after the shared core, then mean and variance.
 *
 * With w_j = L^-1 f_j, y = L^-1 z, q = L^-1 c, A = [w_i . w_j], b = f - [w_j . q]:
 * mean = q . y + b . A^-1 [w_j . y], variance = own - q . q + b . A^-1 b.
 */
export class TargetSystem {
  mean = 0
  variance = 0
  private readonly q: Float64Array
  private readonly xs: Float64Array
  private readonly ys: Float64Array
  /** Factor of the extras, row stride k. */
  private readonly g: Float64Array
  /** Their q, y, w_1 .. w_p: [column * k + extra]. */
  private readonly x: Float64Array
  private readonly f: Float64Array
  private readonly base: Float64Array
  private readonly a: Float64Array

  constructor(private readonly problem: Problem, private readonly shared: SharedSystem) {
    const k = problem.neighbours
    const p = problem.drift.size
    this.q = new Float64Array(k)
    this.xs = new Float64Array(k)
    this.ys = new Float64Array(k)
    this.g = new Float64Array(k * k)
    this.x = new Float64Array((2 + p) * k)
    this.f = new Float64Array(p)
    this.base = new Float64Array(p)
    this.a = new Float64Array(p * p)
  }

  /**
   * @param four  q over the core of four targets, interleaved; this is the r-th
   * @param extras  positions in the union of this target's extras, from `at`, `count` of them, ascending
   * @param first  the sample whose drift values were taken off
   * @returns false when the system is singular to working precision
   */
  estimate(t: number, four: Float64Array, r: number, extras: Int32Array, at: number, count: number, first: number): boolean {
    const { shared, q, problem } = this
    const { core, capacity } = shared
    for (let i = 0, o = r; i < core; i++, o += 4) q[i] = four[o]!
    if (count > 0 && !this.addExtras(t, extras, at, count)) return false
    const { own, mean } = problem
    const p = problem.drift.size
    const k = problem.neighbours
    const { x } = this
    const square = run(q, 0, q, 0, core) + run(x, 0, x, 0, count)
    const along = run(q, 0, shared.known, 0, core) + run(x, 0, x, k, count)
    if (p === 0) {
      this.mean = mean + along
      this.variance = Math.max(0, own - square)
      return true
    }
    if (p === 1) {
      const b = 1 - run(q, 0, shared.known, capacity, core) - run(x, 0, x, 2 * k, count)
      const ones = shared.products[0]! + run(x, 2 * k, x, 2 * k, count)
      const values = shared.products[1]! + run(x, 2 * k, x, k, count)
      if (!(ones > 0)) return false
      this.mean = along + b * values / ones
      this.variance = Math.max(0, own - square + b * b / ones)
      return true
    }
    return this.withDrift(t, count, first, square, along)
  }

  private addExtras(t: number, extras: Int32Array, at: number, count: number): boolean {
    const { problem, shared, q, xs, ys, g, x } = this
    const { core, left, beside, open, capacity } = shared
    const stride = shared.extras
    const k = problem.neighbours
    const columns = 2 + problem.drift.size
    for (let a = 0; a < count; a++) {
      xs[a] = shared.xs[extras[at + a]!]!
      ys[a] = shared.ys[extras[at + a]!]!
    }
    fillToSupport(problem.covariance, problem.support, x, 0, 1, xs, ys, 0, count, problem.targets.xs[t]!, problem.targets.ys[t]!)
    const tiny = core + count
    for (let a = 0; a < count; a++) {
      const extra = extras[at + a]! - core
      const from = extra * stride - core
      const row = a * k
      for (let b = 0; b < a; b++) {
        let sum = left[from + extras[at + b]!]!
        const other = b * k
        for (let c = 0; c < b; c++) sum -= g[row + c]! * g[other + c]!
        g[row + b] = sum * g[other + b]!
      }
      const whole = left[extra * stride + extra]!
      let pivot = whole
      for (let c = 0; c < a; c++) pivot -= g[row + c]! * g[row + c]!
      if (!(pivot > tiny * Number.EPSILON * problem.covariance.sill)) return false
      // The diagonal holds reciprocals: it is only ever divided by.
      const inverse = 1 / Math.sqrt(pivot)
      g[row + a] = inverse
      x[a]! -= run(q, 0, beside, extra * core, core)
      for (let column = 1; column < columns; column++) x[column * k + a] = open[(column - 1) * capacity + extra]!
      for (let column = 0; column < columns; column++) {
        const o = column * k
        let sum = x[o + a]!
        for (let c = 0; c < a; c++) sum -= g[row + c]! * x[o + c]!
        x[o + a] = sum * inverse
      }
    }
    return true
  }

  /** Several drift functions: a small Cholesky of A, solved for b and for [w_j . y] at once. */
  private withDrift(t: number, count: number, first: number, square: number, along: number): boolean {
    const { problem, shared, q, x, f, a, base } = this
    const { core, capacity, products } = shared
    const p = problem.drift.size
    const k = problem.neighbours
    problem.drift.at(t, problem.targets.xs[t]!, problem.targets.ys[t]!, f)
    let [mean, extra] = [along, 0]
    for (let i = 0; i < p; i++) {
      const w = (2 + i) * k
      if (i > 0) f[i]! -= problem.drift.columns[i]![first]!
      f[i]! -= run(q, 0, shared.known, (1 + i) * capacity, core) + run(x, 0, x, w, count)
      base[i] = products[p * p + i]! + run(x, w, x, k, count)
      for (let j = 0; j <= i; j++) {
        let sum = products[i * p + j]! + run(x, w, x, (2 + j) * k, count)
        const whole = sum
        for (let c = 0; c < j; c++) sum -= a[i * p + c]! * a[j * p + c]!
        if (j < i) a[i * p + j] = sum / a[j * p + j]!
        else if (sum > DEPENDENT * whole) a[i * p + i] = Math.sqrt(sum)
        else return false
      }
      for (let c = 0; c < i; c++) {
        f[i]! -= a[i * p + c]! * f[c]!
        base[i]! -= a[i * p + c]! * base[c]!
      }
      f[i]! /= a[i * p + i]!
      base[i]! /= a[i * p + i]!
      mean += f[i]! * base[i]!
      extra += f[i]! * f[i]!
    }
    this.mean = mean
    this.variance = Math.max(0, problem.own - square + extra)
    return true
  }
}
