import { solveBackward } from '../linear/cholesky.ts'
import { dot } from './kriging-system.ts'
import type { KrigingSystem } from './kriging-system.ts'

/** mean = drift . f + sample . c, for a target's drift values f and covariances c. */
export interface Dual { readonly sample: Float64Array, readonly drift: Float64Array }

export function dualOf(system: KrigingSystem): Dual {
  const { n, p, q, r, y, l } = system
  const drift = new Float64Array(p)
  const sample = y.slice(0, n)
  for (let j = 0; j < p; j++) {
    drift[j] = dot(q[j]!, y, n)
    for (let k = 0; k < n; k++) sample[k]! -= drift[j]! * q[j]![k]!
  }
  solveBackward(l, n, n, sample)
  for (let i = p - 1; i >= 0; i--) {
    for (let j = i + 1; j < p; j++) drift[i]! -= r[i * p + j]! * drift[j]!
    drift[i]! /= r[i * p + i]!
  }
  return { sample, drift }
}

/** |R^-T f - known|^2, or |R^-T (f - known)|^2 when `before`: what not knowing the drift adds to the variance. */
export function driftVariance({ p, r }: KrigingSystem, f: Float64Array, known: Float64Array, before: boolean): number {
  let sum = 0
  for (let j = 0; j < p; j++) {
    if (before) f[j]! -= known[j]!
    for (let i = 0; i < j; i++) f[j]! -= r[i * p + j]! * f[i]!
    f[j]! /= r[j * p + j]!
    const left = before ? f[j]! : f[j]! - known[j]!
    sum += left * left
  }
  return sum
}
