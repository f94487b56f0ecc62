import { DegenerateError } from '../../core/index.ts'
import { solveBackward, solveForward } from '../linear/cholesky.ts'
import { choleskyBlocked } from '../linear/cholesky-blocked.ts'

/** A drift function counts as a sum of the others when less than this share of it is left after taking them out. */
const DEPENDENT = 1e-10
/** What is added to the diagonal, as a share of the sill, when a covariance matrix is singular to working precision. */
export const JITTER = 1e-10

/**
 * One kriging system: covariance matrix K (n x n) of the samples, drift functions F (n x p), values z (less the mean, when known).
 *
 * With K = L L^T, W = L^-1 F = Q R (Q orthonormal) and q = L^-1 c for a target's covariances c:
 *   g = R^-T f - Q^T q,   mean = (q + Q g) . L^-1 z,   variance = C(v, v) - q . q + g . g,   weights = L^-T (q + Q g)
 * Room for n up to `capacity` is taken once, so that a neighbourhood costs no memory. Plain loops: the fast paths are held against it.
 * Source: Cressie, N. (1993) Statistics for spatial data, 3.4; the orthogonal form as in Golub and Van Loan, Matrix computations, 6.1.
 */
export class KrigingSystem {
  /** L, row-major, row stride n, lower triangle. */
  readonly l: Float64Array
  /** Columns of F, replaced by those of Q. */
  readonly q: readonly Float64Array[]
  /** z, replaced by L^-1 z. */
  readonly y: Float64Array
  /** Upper triangular R, p x p row-major. */
  readonly r: Float64Array
  n = 0

  constructor(readonly capacity: number, readonly p: number) {
    this.l = new Float64Array(capacity * capacity)
    this.q = Array.from({ length: p }, () => new Float64Array(capacity))
    this.y = new Float64Array(capacity)
    this.r = new Float64Array(p * p)
  }

  /**
   * Factors the system of n samples, whose F and z stand in `q` and `y`.
   * @param fillMatrix  writes K into the lower triangle of `l`; called again should K turn out singular
   * @returns whether the diagonal had to be raised by JITTER of itself because K was singular to working precision
   * @throws DegenerateError 'singular' when even that does not do; 'drift undetermined' when the drift functions are not independent
   *   over the samples (too few of them, or all on one line)
   */
  factor(n: number, fillMatrix: (l: Float64Array) => void, field = 'points'): boolean {
    this.n = n
    const regularised = this.factorMatrix(n, fillMatrix, field)
    solveForward(this.l, n, n, this.y)
    for (let j = 0; j < this.p; j++) this.orthonormalise(j, field)
    return regularised
  }

  private factorMatrix(n: number, fillMatrix: (l: Float64Array) => void, field: string): boolean {
    fillMatrix(this.l)
    if (choleskyBlocked(this.l, n) < 0) return false
    fillMatrix(this.l)
    for (let i = 0; i < n; i++) this.l[i * n + i]! *= 1 + JITTER
    const row = choleskyBlocked(this.l, n)
    if (row >= 0) throw new DegenerateError('singular', field, row, 'samples and a model whose covariance matrix can be inverted; a nugget or error variances make it so')
    return true
  }

  /** Gram-Schmidt, twice over, of column j against those before it. */
  private orthonormalise(j: number, field: string): void {
    const { n, p, r } = this
    const column = this.q[j]!
    solveForward(this.l, n, n, column)
    const before = Math.sqrt(dot(column, column, n))
    for (let i = 0; i < j; i++) r[i * p + j] = 0
    for (let pass = 0; pass < 2; pass++) {
      for (let i = 0; i < j; i++) {
        const along = dot(this.q[i]!, column, n)
        r[i * p + j]! += along
        for (let k = 0; k < n; k++) column[k]! -= along * this.q[i]![k]!
      }
    }
    const after = Math.sqrt(dot(column, column, n))
    if (!(after > DEPENDENT * before) || j >= n) {
      throw new DegenerateError('drift undetermined', field, n, 'samples that fix the drift: more of them, not all on one line')
    }
    r[j * p + j] = after
    for (let k = 0; k < n; k++) column[k]! /= after
  }

  /** c <- L^-1 c and g <- R^-T f - Q^T c, f being the drift functions at the target; both in place. */
  reduce(c: Float64Array, f: Float64Array): void {
    solveForward(this.l, this.n, this.n, c)
    this.reduceDrift(c, f)
  }

  /** As `reduce` for a c that is L^-1 c already. */
  reduceDrift(c: Float64Array, f: Float64Array): void {
    const { n, p, r } = this
    for (let j = 0; j < p; j++) {
      let sum = f[j]!
      for (let i = 0; i < j; i++) sum -= r[i * p + j]! * f[i]!
      f[j] = sum / r[j * p + j]!
    }
    for (let j = 0; j < p; j++) f[j]! -= dot(this.q[j]!, c, n)
  }

  /** Mean (less the known mean) of a target whose c and f have been reduced. */
  mean(q: Float64Array, g: Float64Array): number {
    let sum = dot(q, this.y, this.n)
    for (let j = 0; j < this.p; j++) sum += g[j]! * dot(this.q[j]!, this.y, this.n)
    return sum
  }

  /** Variance of a target whose c and f have been reduced, own = C(v, v); rounding below zero is cut off. */
  variance(q: Float64Array, g: Float64Array, own: number): number {
    return Math.max(0, own - dot(q, q, this.n) + dot(g, g, this.p))
  }

  /** Weights of the samples, from a reduced c, in its place. */
  weights(q: Float64Array, g: Float64Array): void {
    for (let j = 0; j < this.p; j++) for (let k = 0; k < this.n; k++) q[k]! += g[j]! * this.q[j]![k]!
    solveBackward(this.l, this.n, this.n, q)
  }
}

export function dot(a: Float64Array, b: Float64Array, n: number): number {
  let sum = 0
  for (let i = 0; i < n; i++) sum += a[i]! * b[i]!
  return sum
}
