/** The inverse of a lower triangular matrix, row-major n x n; entries above the diagonal are zero. */
export function invertLower(l: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n)
  for (let i = 0; i < n; i++) {
    const row = i * n
    // Row i of the inverse is (e_i - sum over k < i of l_ik * row k) / l_ii: whole rows at a time, so that memory is read in order.
    for (let k = 0; k < i; k++) {
      const factor = l[row + k]!
      const other = k * n
      for (let j = 0; j <= k; j++) inverse[row + j]! -= factor * inverse[other + j]!
    }
    const pivot = 1 / l[row + i]!
    for (let j = 0; j < i; j++) inverse[row + j]! *= pivot
    inverse[row + i] = pivot
  }
  return inverse
}
