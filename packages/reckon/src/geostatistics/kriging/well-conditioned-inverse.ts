import { invertLower } from '../linear/invert-lower.ts'
import type { KrigingSystem } from './kriging-system.ts'
import type { Problem } from './options.ts'

/** The inverse is used in place of the factor only where it costs at most six of sixteen digits. */
const WELL_CONDITIONED = 1e6

/** K^-1 (lower triangle), or undefined when the condition number in the 1-norm is beyond WELL_CONDITIONED. */
export function wellConditionedInverse({ samples, covariance }: Problem, system: KrigingSystem): Float64Array | undefined {
  const { n, l } = system
  const m = invertLower(l, n)
  const inverse = new Float64Array(n * n)
  for (let k = 0; k < n; k++) {
    for (let i = 0; i <= k; i++) {
      const factor = m[k * n + i]!
      for (let j = 0; j <= i; j++) inverse[i * n + j]! += factor * m[k * n + j]!
    }
  }
  const column = new Float64Array(n)
  let [norm, inverseNorm] = [0, 0]
  const sums = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    covariance.fill(column, 0, 1, samples.xs, samples.ys, 0, n, samples.xs[i]!, samples.ys[i]!)
    norm = Math.max(norm, samples.errors[i]! + column.reduce((sum, value) => sum + Math.abs(value), 0))
    for (let j = 0; j <= i; j++) {
      const size = Math.abs(inverse[i * n + j]!)
      sums[i]! += size
      if (j < i) sums[j]! += size
    }
  }
  for (const sum of sums) inverseNorm = Math.max(inverseNorm, sum)
  return norm * inverseNorm <= WELL_CONDITIONED ? inverse : undefined
}
