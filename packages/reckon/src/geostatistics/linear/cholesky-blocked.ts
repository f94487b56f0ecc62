import { subtractProducts } from './subtract-products.ts'

/** Columns per block: for a large matrix the block's rows of L stay in the second-level cache while all rows below pass by. */
const WIDE = 64
const NARROW = 8
const LARGE = 256

/**
 * As `choleskyPlain`, about twice as fast: the same sums, block by block, two rows against four at a time.
 * The results agree to rounding.
 * @returns -1 when done, else a row whose pivot was not above n * eps * (its own diagonal entry)
 * Source: Golub, G. and Van Loan, C. (2013) Matrix computations, 4th ed., 4.2.6.
 */
export function choleskyBlocked(a: Float64Array, n: number): number {
  const block = n > LARGE ? WIDE : NARROW
  const diagonal = new Float64Array(n)
  for (let i = 0; i < n; i++) diagonal[i] = a[i * n + i]!
  for (let start = 0; start < n; start += block) {
    const end = Math.min(start + block, n)
    subtractProducts(a, n, a, n, n, start, end, start)
    const row = factorDiagonal(a, n, start, end, diagonal)
    if (row >= 0) return row
    solveBelow(a, n, start, end)
  }
  return -1
}

function factorDiagonal(a: Float64Array, n: number, start: number, end: number, diagonal: Float64Array): number {
  const small = n * Number.EPSILON
  for (let i = start; i < end; i++) {
    for (let j = start; j < i; j++) {
      let sum = a[i * n + j]!
      for (let k = start; k < j; k++) sum -= a[i * n + k]! * a[j * n + k]!
      a[i * n + j] = sum / a[j * n + j]!
    }
    let pivot = a[i * n + i]!
    for (let k = start; k < i; k++) pivot -= a[i * n + k]! ** 2
    if (!(pivot > small * diagonal[i]!)) return i
    a[i * n + i] = Math.sqrt(pivot)
  }
  return -1
}

/** Rows below the block: a[i, block] <- a[i, block] L^-T, four rows at a time. */
function solveBelow(a: Float64Array, n: number, start: number, end: number): void {
  let i = end
  for (; i + 3 < n; i += 4) {
    const p = i * n
    const q = p + n
    const r = q + n
    const s = r + n
    for (let j = start; j < end; j++) {
      const row = j * n
      let sp = a[p + j]!, sq = a[q + j]!, sr = a[r + j]!, ss = a[s + j]!
      for (let k = start; k < j; k++) {
        const l = a[row + k]!
        sp -= a[p + k]! * l
        sq -= a[q + k]! * l
        sr -= a[r + k]! * l
        ss -= a[s + k]! * l
      }
      const inverse = 1 / a[row + j]!
      a[p + j] = sp * inverse
      a[q + j] = sq * inverse
      a[r + j] = sr * inverse
      a[s + j] = ss * inverse
    }
  }
  for (; i < n; i++) {
    for (let j = start; j < end; j++) {
      let sum = a[i * n + j]!
      for (let k = start; k < j; k++) sum -= a[i * n + k]! * a[j * n + k]!
      a[i * n + j] = sum / a[j * n + j]!
    }
  }
}
