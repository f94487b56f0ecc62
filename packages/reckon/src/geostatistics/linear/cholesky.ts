/**
 * Cholesky factor in place: on return the lower triangle of `a` (row-major, n x n, row stride n) holds L with A = L L^T.
 * Only the lower triangle is read; the upper is left as it was.
 *
 * @returns -1 when done, else the row whose pivot was not above n * eps * (its own diagonal entry): A is singular to working precision
 * Source: Golub, G. and Van Loan, C. (2013) Matrix computations, 4th ed., 4.2.
 */
export function choleskyPlain(a: Float64Array, n: number): number {
  const small = n * Number.EPSILON
  for (let i = 0; i < n; i++) {
    const ri = i * n
    for (let j = 0; j < i; j++) {
      const rj = j * n
      let sum = a[ri + j]!
      for (let k = 0; k < j; k++) sum -= a[ri + k]! * a[rj + k]!
      a[ri + j] = sum / a[rj + j]!
    }
    const diagonal = a[ri + i]!
    let pivot = diagonal
    for (let k = 0; k < i; k++) pivot -= a[ri + k]! * a[ri + k]!
    if (!(pivot > small * diagonal)) return i
    a[ri + i] = Math.sqrt(pivot)
  }
  return -1
}

/** x <- L^-1 x, L lower triangular row-major n x n with row stride `stride`. */
export function solveForward(l: Float64Array, n: number, stride: number, x: Float64Array): void {
  for (let i = 0; i < n; i++) {
    const row = i * stride
    let sum = x[i]!
    for (let k = 0; k < i; k++) sum -= l[row + k]! * x[k]!
    x[i] = sum / l[row + i]!
  }
}

/** x <- L^-T x. */
export function solveBackward(l: Float64Array, n: number, stride: number, x: Float64Array): void {
  for (let i = n - 1; i >= 0; i--) {
    const row = i * stride
    const xi = x[i]! / l[row + i]!
    x[i] = xi
    for (let k = 0; k < i; k++) x[k]! -= l[row + k]! * xi
  }
}
