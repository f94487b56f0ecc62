import type { Enu, Matrix3 } from '../core/index.ts'

export const add = (a: Enu, b: Enu): Enu => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
export const subtract = (a: Enu, b: Enu): Enu => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const scaled = (a: Enu, k: number): Enu => [a[0] * k, a[1] * k, a[2] * k]
export const dot = (a: Enu, b: Enu): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const cross = (a: Enu, b: Enu): Enu => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
/** Length, without overflow. */
export const length = (a: Enu): number => Math.hypot(a[0], a[1], a[2])
/** The same direction with length 1; a zero vector has none, and callers rule it out first. */
export const unit = (a: Enu): Enu => {
  const size = length(a)
  return [a[0] / size, a[1] / size, a[2] / size]
}

export const zeroMatrix: Matrix3 = [[0, 0, 0], [0, 0, 0], [0, 0, 0]]
export const identity: Matrix3 = [[1, 0, 0], [0, 1, 0], [0, 0, 1]]
/** a + k b. */
export const plus = (a: Matrix3, b: Matrix3, k: number): Matrix3 => [add(a[0], scaled(b[0], k)), add(a[1], scaled(b[1], k)), add(a[2], scaled(b[2], k))]
/** v vᵀ. */
export const outer = (v: Enu): Matrix3 => [scaled(v, v[0]), scaled(v, v[1]), scaled(v, v[2])]
export const times = (m: Matrix3, v: Enu): Enu => [dot(m[0], v), dot(m[1], v), dot(m[2], v)]
/** vᵀ M v: for a covariance, the variance along a unit vector. */
export const along = (m: Matrix3, v: Enu): number => dot(v, times(m, v))
