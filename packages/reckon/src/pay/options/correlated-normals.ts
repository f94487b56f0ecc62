import { choleskyInPlace, InputError } from '../../core/index.ts'
import type { Draws } from '../../core/index.ts'

/**
 * Standard normal numbers that move together: one row a variable, `count` columns.
 * @param correlation  m x m, symmetric, ones on its diagonal, positive definite; not modified
 * @throws InputError when it is not square; DegenerateError when no variables can move so
 */
export function correlatedNormals(correlation: readonly (readonly number[])[], count: number, draws: Draws): readonly Float64Array[] {
  const m = correlation.length
  if (correlation.some(row => row.length !== m)) throw new InputError('correlation', correlation, 'a square table')
  const factor = Float64Array.from(correlation.flat())
  choleskyInPlace(factor, m)
  const rows = Array.from({ length: m }, () => new Float64Array(count))
  const z = new Float64Array(m)
  for (let k = 0; k < count; k++) {
    for (let i = 0; i < m; i++) {
      z[i] = draws.normal()
      let sum = 0
      for (let j = 0; j <= i; j++) sum += factor[i * m + j]! * z[j]!
      rows[i]![k] = sum
    }
  }
  return rows
}
