import type { BlockPattern } from './block-pattern.ts'

/** A sparse symmetric matrix in 3 x 3 blocks, each row-major: the diagonal, and the blocks of the pattern. */
export interface BlockMatrix {
  readonly pattern: BlockPattern
  readonly diagonal: Float64Array
  readonly lower: Float64Array
}

/** A Cholesky factor N = L Lᵀ by blocks. */
export interface BlockFactor {
  readonly pattern: BlockPattern
  /** The inverses of the diagonal blocks of L, lower triangular, row-major. A row of zeros stands for a direction that nothing determines. */
  readonly inverse: Float64Array
  readonly lower: Float64Array
  /** Unknowns (3 times the block plus the component) that nothing determines; they are held where they are. */
  readonly loose: readonly number[]
}

/** A pivot smaller than this share of its diagonal is rounding: nothing observes that direction. */
const leastPivot = 1e-12

export const emptyMatrix = (pattern: BlockPattern): BlockMatrix =>
  ({ pattern, diagonal: new Float64Array(9 * pattern.size), lower: new Float64Array(9 * pattern.row.length) })

/**
 * Factors a sparse symmetric matrix, right-looking by blocks.
 * @param matrix  positive semi-definite; not modified. Directions without information are found and held, never divided by.
 * Cost: the sum over columns of the square of their block count; about linear for chains with few loops.
 * Source: George & Liu, Computer Solution of Large Sparse Positive Definite Systems (1981), ch. 5.
 */
export function factorize(matrix: BlockMatrix): BlockFactor {
  const { pattern } = matrix
  const { size, start, row } = pattern
  const diagonal = matrix.diagonal.slice()
  const lower = matrix.lower.slice()
  const inverse = new Float64Array(9 * size)
  const loose: number[] = []

  for (let k = 0; k < size; k++) {
    invertPivot(diagonal, matrix.diagonal, inverse, k, loose)
    const from = start[k]!
    const to = start[k + 1]!
    for (let p = from; p < to; p++) timesTransposedInverse(lower, 9 * p, inverse, 9 * k)
    for (let q = from; q < to; q++) {
      const column = row[q]!
      subtractProduct(diagonal, 9 * column, lower, 9 * q, 9 * q)
      let at = start[column]!
      for (let p = q + 1; p < to; p++) {
        const wanted = row[p]!
        while (row[at]! < wanted) at++
        subtractProduct(lower, 9 * at, lower, 9 * p, 9 * q)
      }
    }
  }
  return { pattern, inverse, lower, loose }
}

/** Solves L Lᵀ x = b; b has 3 numbers a block and is not modified. */
export function solve(factor: BlockFactor, b: Float64Array): Float64Array {
  const { pattern: { size, start, row }, inverse, lower } = factor
  const x = b.slice()
  for (let k = 0; k < size; k++) {
    const i = 9 * k
    const [x0, x1, x2] = [x[3 * k]!, x[3 * k + 1]!, x[3 * k + 2]!]
    const y0 = inverse[i]! * x0
    const y1 = inverse[i + 3]! * x0 + inverse[i + 4]! * x1
    const y2 = inverse[i + 6]! * x0 + inverse[i + 7]! * x1 + inverse[i + 8]! * x2
    x[3 * k] = y0; x[3 * k + 1] = y1; x[3 * k + 2] = y2
    for (let p = start[k]!; p < start[k + 1]!; p++) {
      const at = 3 * row[p]!
      const l = 9 * p
      x[at]! -= lower[l]! * y0 + lower[l + 1]! * y1 + lower[l + 2]! * y2
      x[at + 1]! -= lower[l + 3]! * y0 + lower[l + 4]! * y1 + lower[l + 5]! * y2
      x[at + 2]! -= lower[l + 6]! * y0 + lower[l + 7]! * y1 + lower[l + 8]! * y2
    }
  }
  backSubstitute(factor, x)
  return x
}

/** Solves Lᵀ x = y in place. */
function backSubstitute({ pattern: { size, start, row }, inverse, lower }: BlockFactor, x: Float64Array): void {
  for (let k = size - 1; k >= 0; k--) {
    let [y0, y1, y2] = [x[3 * k]!, x[3 * k + 1]!, x[3 * k + 2]!]
    for (let p = start[k]!; p < start[k + 1]!; p++) {
      const at = 3 * row[p]!
      const l = 9 * p
      const [x0, x1, x2] = [x[at]!, x[at + 1]!, x[at + 2]!]
      y0 -= lower[l]! * x0 + lower[l + 3]! * x1 + lower[l + 6]! * x2
      y1 -= lower[l + 1]! * x0 + lower[l + 4]! * x1 + lower[l + 7]! * x2
      y2 -= lower[l + 2]! * x0 + lower[l + 5]! * x1 + lower[l + 8]! * x2
    }
    const i = 9 * k
    x[3 * k] = inverse[i]! * y0 + inverse[i + 3]! * y1 + inverse[i + 6]! * y2
    x[3 * k + 1] = inverse[i + 4]! * y1 + inverse[i + 7]! * y2
    x[3 * k + 2] = inverse[i + 8]! * y2
  }
}

/** Factors diagonal block k and puts the inverse of its factor into `inverse`; notes components that nothing determines. */
function invertPivot(reduced: Float64Array, original: Float64Array, inverse: Float64Array, k: number, loose: number[]): void {
  const d = 9 * k
  const root = (pivot: number, component: number): number => {
    if (pivot > leastPivot * original[d + 4 * component]!) return 1 / Math.sqrt(pivot)
    loose.push(3 * k + component)
    return 0
  }
  const i00 = root(reduced[d]!, 0)
  const l10 = reduced[d + 3]! * i00
  const l20 = reduced[d + 6]! * i00
  const i11 = root(reduced[d + 4]! - l10 * l10, 1)
  const l21 = (reduced[d + 7]! - l20 * l10) * i11
  const i22 = root(reduced[d + 8]! - l20 * l20 - l21 * l21, 2)
  const i10 = -l10 * i00 * i11
  inverse[d] = i00
  inverse[d + 3] = i10
  inverse[d + 4] = i11
  inverse[d + 6] = -(l20 * i00 + l21 * i10) * i22
  inverse[d + 7] = -l21 * i11 * i22
  inverse[d + 8] = i22
}

/** a = a Tᵀ with T lower triangular. */
function timesTransposedInverse(a: Float64Array, at: number, t: Float64Array, i: number): void {
  for (let r = at; r < at + 9; r += 3) {
    const [a0, a1, a2] = [a[r]!, a[r + 1]!, a[r + 2]!]
    a[r] = a0 * t[i]!
    a[r + 1] = a0 * t[i + 3]! + a1 * t[i + 4]!
    a[r + 2] = a0 * t[i + 6]! + a1 * t[i + 7]! + a2 * t[i + 8]!
  }
}

/** target = target - A Bᵀ, all 3 x 3 blocks. */
function subtractProduct(target: Float64Array, at: number, blocks: Float64Array, a: number, b: number): void {
  const b0 = blocks[b]!, b1 = blocks[b + 1]!, b2 = blocks[b + 2]!
  const b3 = blocks[b + 3]!, b4 = blocks[b + 4]!, b5 = blocks[b + 5]!
  const b6 = blocks[b + 6]!, b7 = blocks[b + 7]!, b8 = blocks[b + 8]!
  for (let r = 0; r < 9; r += 3) {
    const a0 = blocks[a + r]!, a1 = blocks[a + r + 1]!, a2 = blocks[a + r + 2]!
    target[at + r]! -= a0 * b0 + a1 * b1 + a2 * b2
    target[at + r + 1]! -= a0 * b3 + a1 * b4 + a2 * b5
    target[at + r + 2]! -= a0 * b6 + a1 * b7 + a2 * b8
  }
}
