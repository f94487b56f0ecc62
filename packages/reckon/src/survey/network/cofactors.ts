import type { Rows } from './rows.ts'
import type { Solution } from './solve-network.ts'
import type { BlockMatrix } from '../sparse/block-cholesky.ts'
import type { Covariance3 } from '../matrix3.ts'
import { blockAt } from '../sparse/block-pattern.ts'
import { add3, map3, zero3 } from '../matrix3.ts'
import { solve } from '../sparse/block-cholesky.ts'

/** The covariance of a block of unknowns; zero for a held one. */
export function covarianceOf(cofactors: BlockMatrix, block: number): Covariance3 {
  return block < 0 ? zero3 : map3((r, c) => (cofactors.diagonal[9 * block + 3 * r + c]! + cofactors.diagonal[9 * block + 3 * c + r]!) / 2)
}

/** The covariance of one end of a leg from the other; either may be held. */
export function legCovariance(cofactors: BlockMatrix, from: number, to: number): Covariance3 {
  const ends = add3(covarianceOf(cofactors, from), covarianceOf(cofactors, to))
  if (from < 0 || to < 0) return ends
  const { lower, pattern } = cofactors
  const at = 9 * blockAt(pattern, Math.max(from, to), Math.min(from, to))
  return map3((r, c) => ends[r][c] - lower[at + 3 * r + c]! - lower[at + 3 * c + r]!)
}

/**
 * aᵀ Q b for the coefficients of two rows: the covariance of what they compute, in units of their standard deviations. Both rows must touch the
 * same blocks.
 */
export function rowCovariance(rows: Rows, cofactors: BlockMatrix, a: number, b: number): number {
  const from = rows.from[a]!, to = rows.to[a]!, shared = rows.shared[a]!
  const { diagonal, lower, pattern } = cofactors
  const { j, g } = rows
  let sum = 0
  if (to >= 0) sum += form(diagonal, 9 * to, j, 3 * a, j, 3 * b)
  if (from >= 0) sum += form(diagonal, 9 * from, j, 3 * a, j, 3 * b)
  if (shared >= 0) sum += form(diagonal, 9 * shared, g, 3 * a, g, 3 * b)
  if (from >= 0 && to >= 0) {
    const at = 9 * blockAt(pattern, Math.max(from, to), Math.min(from, to))
    sum -= form(lower, at, j, 3 * a, j, 3 * b) + form(lower, at, j, 3 * b, j, 3 * a)
  }
  for (const [station, sign] of [[to, 1], [from, -1]] as const) {
    if (station < 0 || shared < 0) continue
    const at = 9 * blockAt(pattern, shared, station)
    sum += sign * (form(lower, at, g, 3 * a, j, 3 * b) + form(lower, at, g, 3 * b, j, 3 * a))
  }
  return sum
}

/** Cov(a, b) of any two blocks, by solving for one of them. */
export function blockCovariances(solution: Solution, a: number): (b: number) => Covariance3 {
  if (a < 0) return () => zero3
  const size = 3 * solution.factor.pattern.size
  const columns = [0, 1, 2].map((c) => {
    const unit = new Float64Array(size)
    unit[3 * a + c] = 1
    return solve(solution.factor, unit)
  })
  return b => b < 0 ? zero3 : map3((r, c) => columns[r]![3 * b + c]!)
}

/** uᵀ M v */
function form(m: Float64Array, at: number, u: Float64Array, i: number, v: Float64Array, k: number): number {
  const v0 = v[k]!, v1 = v[k + 1]!, v2 = v[k + 2]!
  return u[i]! * (m[at]! * v0 + m[at + 1]! * v1 + m[at + 2]! * v2)
    + u[i + 1]! * (m[at + 3]! * v0 + m[at + 4]! * v1 + m[at + 5]! * v2)
    + u[i + 2]! * (m[at + 6]! * v0 + m[at + 7]! * v1 + m[at + 8]! * v2)
}
