/**
 * out[i, j] -= sum over k < count of m[i, k] m[j, k], for j in [firstColumn, lastColumn) and i from firstColumn to rows - 1, j <= i.
 * Row-major, with row strides; `out` and `m` may be one array when the columns read lie left of those written.
 * Two rows against four at a time; just above the diagonal a few entries are written that nothing reads.
 */
export function subtractProducts(
  out: Float64Array, outStride: number, m: Float64Array, stride: number, rows: number, firstColumn: number, lastColumn: number, count: number,
): void {
  if (count === 0) return
  for (let i = firstColumn; i < rows; i += 2) {
    const two = i + 1 < rows
    const last = Math.min(lastColumn, two ? i + 2 : i + 1)
    let j = firstColumn
    if (two) for (; j + 3 < last; j += 4) twoByFour(out, i * outStride + j, outStride, m, i * stride, j * stride, stride, count)
    for (; j < last; j++) {
      out[i * outStride + j]! -= product(m, i * stride, j * stride, count)
      if (two) out[(i + 1) * outStride + j]! -= product(m, (i + 1) * stride, j * stride, count)
    }
  }
}

function product(m: Float64Array, p: number, q: number, count: number): number {
  let sum = 0
  for (let k = 0; k < count; k++) sum += m[p + k]! * m[q + k]!
  return sum
}

function twoByFour(out: Float64Array, at: number, outStride: number, m: Float64Array, p: number, r0: number, stride: number, count: number): void {
  const q = p + stride
  const r1 = r0 + stride
  const r2 = r1 + stride
  const r3 = r2 + stride
  let p0 = 0, p1 = 0, p2 = 0, p3 = 0, q0 = 0, q1 = 0, q2 = 0, q3 = 0
  for (let k = 0; k < count; k++) {
    const x = m[p + k]!
    const y = m[q + k]!
    const s0 = m[r0 + k]!
    const s1 = m[r1 + k]!
    const s2 = m[r2 + k]!
    const s3 = m[r3 + k]!
    p0 += x * s0
    p1 += x * s1
    p2 += x * s2
    p3 += x * s3
    q0 += y * s0
    q1 += y * s1
    q2 += y * s2
    q3 += y * s3
  }
  out[at]! -= p0
  out[at + 1]! -= p1
  out[at + 2]! -= p2
  out[at + 3]! -= p3
  const below = at + outStride
  out[below]! -= q0
  out[below + 1]! -= q1
  out[below + 2]! -= q2
  out[below + 3]! -= q3
}
