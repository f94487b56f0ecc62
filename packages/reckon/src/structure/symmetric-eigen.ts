import type { Enu, Matrix3 } from '../core/index.ts'

export interface Eigen3 {
  /** Largest first. */
  readonly values: Enu
  /** Unit vectors in the same order, at right angles to each other, right-handed. */
  readonly vectors: readonly [Enu, Enu, Enu]
}

const pairs = [[0, 1], [0, 2], [1, 2]] as const
const sweepsAllowed = 40 // five or six are enough; the count only bounds the loop

/**
 * Eigenvalues and eigenvectors of a symmetric 3 x 3 matrix, by cyclic Jacobi rotations.
 *
 * Only the upper triangle is read. Accuracy: each value to a few units of rounding of the largest one.
 * Source: Golub and Van Loan, Matrix Computations, section on Jacobi methods (from memory).
 */
export function symmetricEigen(matrix: Matrix3): Eigen3 {
  const a = [[matrix[0][0], matrix[0][1], matrix[0][2]], [matrix[0][1], matrix[1][1], matrix[1][2]], [matrix[0][2], matrix[1][2], matrix[2][2]]]
  const v = [[1, 0, 0], [0, 1, 0], [0, 0, 1]]
  const negligible = Number.EPSILON / 8 * Math.max(...a.flat().map(Math.abs))
  for (let sweep = 0; sweep < sweepsAllowed; sweep++) {
    let turned = false
    for (const [p, q] of pairs) {
      if (Math.abs(a[p]![q]!) <= negligible) continue
      rotate(a, v, p, q)
      turned = true
    }
    if (!turned) break
  }
  const order = [0, 1, 2].sort((i, j) => a[j]![j]! - a[i]![i]!)
  const column = (i: number): Enu => [v[0]![i]!, v[1]![i]!, v[2]![i]!]
  const [first, second, third] = order.map(column) as [Enu, Enu, Enu]
  const handed = first[0] * (second[1] * third[2] - second[2] * third[1]) - first[1] * (second[0] * third[2] - second[2] * third[0]) +
    first[2] * (second[0] * third[1] - second[1] * third[0])
  const [l1, l2, l3] = order.map(i => a[i]![i]!) as [number, number, number]
  return { values: [l1, l2, l3], vectors: [first, second, handed < 0 ? [-third[0], -third[1], -third[2]] : third] }
}

/** Turns rows and columns p and q so that their common element, which is not zero, vanishes. */
function rotate(a: number[][], v: number[][], p: number, q: number): void {
  const apq = a[p]![q]!
  const theta = (a[q]![q]! - a[p]![p]!) / (2 * apq)
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1))
  const c = 1 / Math.hypot(t, 1)
  const s = t * c
  a[p]![p] = a[p]![p]! - t * apq
  a[q]![q] = a[q]![q]! + t * apq
  a[p]![q] = a[q]![p] = 0
  const k = 3 - p - q
  const akp = a[k]![p]!, akq = a[k]![q]!
  a[k]![p] = a[p]![k] = c * akp - s * akq
  a[k]![q] = a[q]![k] = s * akp + c * akq
  for (const row of v) {
    const vp = row[p]!, vq = row[q]!
    row[p] = c * vp - s * vq
    row[q] = s * vp + c * vq
  }
}
