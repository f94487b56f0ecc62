import type { BlockFactor, BlockMatrix } from './block-cholesky.ts'

/**
 * The entries of the inverse of N = L Lᵀ that stand where L has entries: every diagonal block, and every pair of rows that share an
 * equation. That is all that station covariances and redundancy numbers need, at the cost of about two factorizations.
 * @returns a symmetric matrix on the factor's pattern, the block (row, column) with row > column as Cov(row, column)
 * Source: Takahashi, Fagan, Chin (1973); Erisman & Tinney, 'On computing certain elements of the inverse of a sparse matrix',
 * Comm. ACM 18 (1975) 177.
 */
export function selectedInverse(factor: BlockFactor): BlockMatrix {
  const { pattern, inverse, lower } = factor
  const { size, start, row } = pattern
  const diagonal = new Float64Array(9 * size)
  const off = new Float64Array(9 * row.length)

  for (let k = size - 1; k >= 0; k--) {
    const from = start[k]!
    const count = start[k + 1]! - from
    const y = new Float64Array(9 * count) // L[i,k] L[k,k]^-1
    for (let c = 0; c < count; c++) multiply(y, 9 * c, lower, 9 * (from + c), inverse, 9 * k)
    const z = new Float64Array(9 * count)
    for (let q = 0; q < count; q++) {
      const column = row[from + q]!
      subtractAB(z, 9 * q, diagonal, 9 * column, y, 9 * q)
      let at = start[column]!
      for (let p = q + 1; p < count; p++) {
        const wanted = row[from + p]!
        while (row[at]! < wanted) at++
        subtractAB(z, 9 * p, off, 9 * at, y, 9 * q)
        subtractTransposedAB(z, 9 * q, off, 9 * at, y, 9 * p)
      }
    }
    off.set(z, 9 * from)
    ownBlock(diagonal, inverse, 9 * k)
    for (let q = 0; q < count; q++) subtractTransposedAB(diagonal, 9 * k, y, 9 * q, z, 9 * q)
  }
  return { pattern, diagonal, lower: off }
}

/** target = A B */
function multiply(target: Float64Array, at: number, a: Float64Array, i: number, b: Float64Array, j: number): void {
  for (let r = 0; r < 9; r += 3) {
    for (let c = 0; c < 3; c++) target[at + r + c] = a[i + r]! * b[j + c]! + a[i + r + 1]! * b[j + 3 + c]! + a[i + r + 2]! * b[j + 6 + c]!
  }
}

/** target = target - A B */
function subtractAB(target: Float64Array, at: number, a: Float64Array, i: number, b: Float64Array, j: number): void {
  for (let r = 0; r < 9; r += 3) {
    const a0 = a[i + r]!, a1 = a[i + r + 1]!, a2 = a[i + r + 2]!
    target[at + r]! -= a0 * b[j]! + a1 * b[j + 3]! + a2 * b[j + 6]!
    target[at + r + 1]! -= a0 * b[j + 1]! + a1 * b[j + 4]! + a2 * b[j + 7]!
    target[at + r + 2]! -= a0 * b[j + 2]! + a1 * b[j + 5]! + a2 * b[j + 8]!
  }
}

/** target = target - Aᵀ B */
function subtractTransposedAB(target: Float64Array, at: number, a: Float64Array, i: number, b: Float64Array, j: number): void {
  for (let r = 0; r < 3; r++) {
    const a0 = a[i + r]!, a1 = a[i + 3 + r]!, a2 = a[i + 6 + r]!
    target[at + 3 * r]! -= a0 * b[j]! + a1 * b[j + 3]! + a2 * b[j + 6]!
    target[at + 3 * r + 1]! -= a0 * b[j + 1]! + a1 * b[j + 4]! + a2 * b[j + 7]!
    target[at + 3 * r + 2]! -= a0 * b[j + 2]! + a1 * b[j + 5]! + a2 * b[j + 8]!
  }
}

/** diagonal block = Tᵀ T with T the inverse of the diagonal factor. */
function ownBlock(diagonal: Float64Array, t: Float64Array, at: number): void {
  for (let r = 0; r < 3; r++) {
    for (let c = 0; c < 3; c++) diagonal[at + 3 * r + c] = t[at + r]! * t[at + c]! + t[at + 3 + r]! * t[at + 3 + c]! + t[at + 6 + r]! * t[at + 6 + c]!
  }
}
