import { expNegative } from './linear/exp-negative.ts'

/**
 * Loops that fill covariances of one structure from a place to many. One function per shape, so that each loop holds nothing but
 * its own arithmetic.
 *
 * out[at + stride i] (+)= sill * correlation(|T ((xs, ys)[from + i] - (x, y))|), T = [[t11, t12], [t21, t22]]; added when `add`.
 */
export type Fill = (
  out: Float64Array, at: number, stride: number, xs: Float64Array, ys: Float64Array, from: number, count: number, x: number, y: number,
  t11: number, t12: number, t21: number, t22: number, sill: number, add: boolean,
) => void

export const fillSpherical: Fill = (out, at, stride, xs, ys, from, count, x, y, t11, t12, t21, t22, sill, add) => {
  let o = at
  for (let i = from, end = from + count; i < end; i++, o += stride) {
    const dx = xs[i]! - x
    const dy = ys[i]! - y
    const a = t11 * dx + t12 * dy
    const b = t21 * dx + t22 * dy
    const u2 = a * a + b * b
    const c = u2 < 1 ? sill * (1 - Math.sqrt(u2) * (1.5 - 0.5 * u2)) : 0
    out[o] = add ? out[o]! + c : c
  }
}

export const fillExponential: Fill = (out, at, stride, xs, ys, from, count, x, y, t11, t12, t21, t22, sill, add) => {
  let o = at
  for (let i = from, end = from + count; i < end; i++, o += stride) {
    const dx = xs[i]! - x
    const dy = ys[i]! - y
    const a = t11 * dx + t12 * dy
    const b = t21 * dx + t22 * dy
    const c = sill * expNegative(-Math.sqrt(a * a + b * b))
    out[o] = add ? out[o]! + c : c
  }
}

export const fillGaussian: Fill = (out, at, stride, xs, ys, from, count, x, y, t11, t12, t21, t22, sill, add) => {
  let o = at
  for (let i = from, end = from + count; i < end; i++, o += stride) {
    const dx = xs[i]! - x
    const dy = ys[i]! - y
    const a = t11 * dx + t12 * dy
    const b = t21 * dx + t22 * dy
    const c = sill * expNegative(-(a * a + b * b))
    out[o] = add ? out[o]! + c : c
  }
}

export const fillMatern15: Fill = (out, at, stride, xs, ys, from, count, x, y, t11, t12, t21, t22, sill, add) => {
  let o = at
  for (let i = from, end = from + count; i < end; i++, o += stride) {
    const dx = xs[i]! - x
    const dy = ys[i]! - y
    const a = t11 * dx + t12 * dy
    const b = t21 * dx + t22 * dy
    const u = Math.sqrt(a * a + b * b)
    const c = sill * (1 + u) * expNegative(-u)
    out[o] = add ? out[o]! + c : c
  }
}

export const fillMatern25: Fill = (out, at, stride, xs, ys, from, count, x, y, t11, t12, t21, t22, sill, add) => {
  let o = at
  for (let i = from, end = from + count; i < end; i++, o += stride) {
    const dx = xs[i]! - x
    const dy = ys[i]! - y
    const a = t11 * dx + t12 * dy
    const b = t21 * dx + t22 * dy
    const u2 = a * a + b * b
    const u = Math.sqrt(u2)
    const c = sill * (1 + u + u2 / 3) * expNegative(-u)
    out[o] = add ? out[o]! + c : c
  }
}
