import { solveForward4 } from './interleaved.ts'

/** The diagonal of (L L^T)^-1, without the rest: sums of squares down the columns of L^-1, four columns at a time. */
export function inverseDiagonal(l: Float64Array, n: number): Float64Array {
  const diagonal = new Float64Array(n)
  const x = new Float64Array(4 * n)
  for (let column = 0; column < n; column += 4) {
    x.fill(0, 4 * column)
    for (let r = 0; r < 4 && column + r < n; r++) x[4 * (column + r) + r] = 1
    solveForward4(l, n, n, x, column)
    for (let r = 0; r < 4 && column + r < n; r++) {
      let sum = 0
      for (let o = 4 * column + r; o < 4 * n; o += 4) sum += x[o]! * x[o]!
      diagonal[column + r] = sum
    }
  }
  return diagonal
}
