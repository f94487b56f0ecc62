import { InputError } from '../core/index.ts'
import type { Matrix3 } from '../core/index.ts'

/** A covariance as surveys give it: three rows of three, square of the length unit. */
export type CovarianceRows = readonly (readonly number[])[]

/** Refuses what is not a symmetric 3 x 3 matrix of finite numbers with no negative variance. */
export function checkedCovariance(rows: CovarianceRows, field: string): Matrix3 {
  const wanted = 'a symmetric 3 x 3 matrix of finite numbers, variances not negative'
  const flat = rows.flat()
  const scale = Math.max(...flat.map(Math.abs))
  const bad = rows.length !== 3 || rows.some(row => row.length !== 3) || flat.some(value => !Number.isFinite(value)) ||
    [0, 1, 2].some(i => rows[i]![i]! < 0 || [0, 1, 2].some(k => Math.abs(rows[i]![k]! - rows[k]![i]!) > 1e-9 * scale))
  if (bad) throw new InputError(field, rows, wanted)
  return rows as unknown as Matrix3
}
