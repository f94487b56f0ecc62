import type { Enu } from '../core/index.ts'

/** A symmetric 3 x 3 covariance over [east, north, up], rows first; unit: the length unit squared. */
export type Covariance3 = readonly [Enu, Enu, Enu]

export const zero3: Covariance3 = [[0, 0, 0], [0, 0, 0], [0, 0, 0]]

export const add3 = (a: Covariance3, b: Covariance3): Covariance3 => map3((i, j) => a[i][j] + b[i][j])
export const scale3 = (a: Covariance3, factor: number): Covariance3 => map3((i, j) => a[i][j] * factor)

/** The product of two 3 x 3 matrices. */
export const multiply3 = (a: Covariance3, b: Covariance3): Covariance3 => map3((i, j) => a[i][0] * b[0][j] + a[i][1] * b[1][j] + a[i][2] * b[2][j])

export const transpose3 = (a: Covariance3): Covariance3 => map3((i, j) => a[j][i])

export const apply3 = (a: Covariance3, v: Enu): Enu => [dot3(a[0], v), dot3(a[1], v), dot3(a[2], v)]

export const dot3 = (a: Enu, b: Enu): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

type Index = 0 | 1 | 2

/** A matrix from its entries. */
export function map3(entry: (row: Index, column: Index) => number): Covariance3 {
  const row = (i: Index): Enu => [entry(i, 0), entry(i, 1), entry(i, 2)]
  return [row(0), row(1), row(2)]
}

/**
 * The lower Cholesky factor L with L Lᵀ = a, or undefined when a is not positive definite: a pivot at or below
 * 16 eps of its own diagonal is rounding, not information.
 */
export function cholesky3(a: Covariance3): Covariance3 | undefined {
  const least = 16 * Number.EPSILON
  if (!(a[0][0] > 0)) return undefined
  const l00 = Math.sqrt(a[0][0])
  const l10 = a[1][0] / l00
  const p1 = a[1][1] - l10 * l10
  if (!(p1 > least * a[1][1])) return undefined
  const l11 = Math.sqrt(p1)
  const l20 = a[2][0] / l00
  const l21 = (a[2][1] - l20 * l10) / l11
  const p2 = a[2][2] - l20 * l20 - l21 * l21
  if (!(p2 > least * a[2][2])) return undefined
  return [[l00, 0, 0], [l10, l11, 0], [l20, l21, Math.sqrt(p2)]]
}

/** The inverse of a lower triangular matrix. */
export function invertLower3(l: Covariance3): Covariance3 {
  const i00 = 1 / l[0][0]
  const i11 = 1 / l[1][1]
  const i22 = 1 / l[2][2]
  const i10 = -l[1][0] * i00 * i11
  const i21 = -l[2][1] * i11 * i22
  return [[i00, 0, 0], [i10, i11, 0], [-(l[2][0] * i00 + l[2][1] * i10) * i22, i21, i22]]
}

/** The inverse of a symmetric positive definite matrix, or undefined when it is not that. */
export function invertSymmetric3(a: Covariance3): Covariance3 | undefined {
  const lower = cholesky3(a)
  if (!lower) return undefined
  const inverse = invertLower3(lower)
  return multiply3(transpose3(inverse), inverse)
}
