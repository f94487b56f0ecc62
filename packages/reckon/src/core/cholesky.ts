import { DegenerateError } from './errors.ts'

/**
 * Cholesky factor of a symmetric positive definite matrix, in place of its lower triangle.
 * @param a n x n by rows; only the lower triangle is read; it is overwritten, so pass a copy you own
 * @throws DegenerateError("not positive definite") when a pivot falls to rounding level of its own diagonal entry
 */
export function choleskyInPlace(a: Float64Array, n: number): void {
  for (let j = 0; j < n; j++) {
    const rowJ = j * n
    for (let i = j; i < n; i++) {
      const rowI = i * n
      let sum = a[rowI + j]!
      for (let k = 0; k < j; k++) sum -= a[rowI + k]! * a[rowJ + k]!
      if (i === j) {
        if (!(sum > n * Number.EPSILON * Math.abs(a[rowJ + j]!))) {
          throw new DegenerateError('not positive definite', `matrix[${j}][${j}]`, sum, 'a covariance matrix of distinct observations')
        }
        a[rowJ + j] = Math.sqrt(sum)
      } else a[rowI + j] = sum / a[rowJ + j]!
    }
  }
}

/** Solves L x = b in place of b, L the lower factor by rows. */
export function forwardSolve(l: Float64Array, n: number, b: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let sum = b[i]!
    for (let k = 0; k < i; k++) sum -= l[i * n + k]! * b[k]!
    b[i] = sum / l[i * n + i]!
  }
}

/** Solves Lᵀ x = b in place of b, L the lower factor by rows. */
export function backwardSolve(l: Float64Array, n: number, b: Float64Array): void {
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i]!
    for (let k = i + 1; k < n; k++) sum -= l[k * n + i]! * b[k]!
    b[i] = sum / l[i * n + i]!
  }
}
