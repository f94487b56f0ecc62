/**
 * Kernels on four vectors at once, interleaved: entry i of vector r stands at x[4 i + r]. Each number read of the matrix is used four
 * times and each of the vectors twice, which is what keeps the processor's arithmetic rather than its memory busy.
 */

/** x <- L^-1 x for four vectors; L lower triangular, row-major with row stride `stride`, n x n; vectors zero before entry `from` (even). */
export function solveForward4(l: Float64Array, n: number, stride: number, x: Float64Array, from = 0): void {
  let i = from
  for (; i + 1 < n; i += 2) {
    const a = i * stride
    const b = a + stride
    let a0 = 0, a1 = 0, a2 = 0, a3 = 0, b0 = 0, b1 = 0, b2 = 0, b3 = 0
    for (let k = from, o = 4 * from; k < i; k++, o += 4) {
      const la = l[a + k]!
      const lb = l[b + k]!
      const x0 = x[o]!
      const x1 = x[o + 1]!
      const x2 = x[o + 2]!
      const x3 = x[o + 3]!
      a0 += la * x0
      a1 += la * x1
      a2 += la * x2
      a3 += la * x3
      b0 += lb * x0
      b1 += lb * x1
      b2 += lb * x2
      b3 += lb * x3
    }
    const o = 4 * i
    const pa = 1 / l[a + i]!
    const across = l[b + i]!
    const pb = 1 / l[b + i + 1]!
    a0 = (x[o]! - a0) * pa
    a1 = (x[o + 1]! - a1) * pa
    a2 = (x[o + 2]! - a2) * pa
    a3 = (x[o + 3]! - a3) * pa
    x[o] = a0
    x[o + 1] = a1
    x[o + 2] = a2
    x[o + 3] = a3
    x[o + 4] = (x[o + 4]! - b0 - across * a0) * pb
    x[o + 5] = (x[o + 5]! - b1 - across * a1) * pb
    x[o + 6] = (x[o + 6]! - b2 - across * a2) * pb
    x[o + 7] = (x[o + 7]! - b3 - across * a3) * pb
  }
  if (i < n) {
    const a = i * stride
    const pa = 1 / l[a + i]!
    for (let r = 0; r < 4; r++) {
      let sum = 0
      for (let k = from; k < i; k++) sum += l[a + k]! * x[4 * k + r]!
      x[4 * i + r] = (x[4 * i + r]! - sum) * pa
    }
  }
}

/** out[r] = x_r^T A x_r for four vectors; A symmetric, only its lower triangle read, row-major with row stride `stride`, n x n. */
export function quadraticForm4(a: Float64Array, n: number, stride: number, x: Float64Array, out: Float64Array): void {
  let q0 = 0, q1 = 0, q2 = 0, q3 = 0
  let i = 0
  for (; i + 1 < n; i += 2) {
    const ra = i * stride
    const rb = ra + stride
    let a0 = 0, a1 = 0, a2 = 0, a3 = 0, b0 = 0, b1 = 0, b2 = 0, b3 = 0
    for (let k = 0, o = 0; k < i; k++, o += 4) {
      const ka = a[ra + k]!
      const kb = a[rb + k]!
      const x0 = x[o]!
      const x1 = x[o + 1]!
      const x2 = x[o + 2]!
      const x3 = x[o + 3]!
      a0 += ka * x0
      a1 += ka * x1
      a2 += ka * x2
      a3 += ka * x3
      b0 += kb * x0
      b1 += kb * x1
      b2 += kb * x2
      b3 += kb * x3
    }
    const o = 4 * i
    const da = 0.5 * a[ra + i]!
    const across = a[rb + i]!
    const db = 0.5 * a[rb + i + 1]!
    const x0 = x[o]!
    const x1 = x[o + 1]!
    const x2 = x[o + 2]!
    const x3 = x[o + 3]!
    const y0 = x[o + 4]!
    const y1 = x[o + 5]!
    const y2 = x[o + 6]!
    const y3 = x[o + 7]!
    q0 += x0 * (a0 + da * x0) + y0 * (b0 + across * x0 + db * y0)
    q1 += x1 * (a1 + da * x1) + y1 * (b1 + across * x1 + db * y1)
    q2 += x2 * (a2 + da * x2) + y2 * (b2 + across * x2 + db * y2)
    q3 += x3 * (a3 + da * x3) + y3 * (b3 + across * x3 + db * y3)
  }
  out[0] = q0
  out[1] = q1
  out[2] = q2
  out[3] = q3
  if (i < n) {
    const ra = i * stride
    for (let r = 0; r < 4; r++) {
      let sum = 0.5 * a[ra + i]! * x[4 * i + r]!
      for (let k = 0; k < i; k++) sum += a[ra + k]! * x[4 * k + r]!
      out[r]! += x[4 * i + r]! * sum
    }
  }
  for (let r = 0; r < 4; r++) out[r]! *= 2
}
