import type { BlockMatrix } from '../sparse/block-cholesky.ts'
import type { BlockPattern } from '../sparse/block-pattern.ts'
import { blockAt } from '../sparse/block-pattern.ts'
import { emptyMatrix } from '../sparse/block-cholesky.ts'

/**
 * Linearised observation equations, each divided by its standard deviation. A row touches at most three blocks of three unknowns:
 * it is -j on `from`, +j on `to` and +g on `shared` (a set of instruments); -1 stands for none or for a held station.
 */
export interface Rows {
  readonly count: number
  readonly from: Int32Array
  readonly to: Int32Array
  readonly shared: Int32Array
  readonly j: Float64Array
  readonly g: Float64Array
  /** Observed minus computed. */
  readonly residual: Float64Array
}

export function emptyRows(count: number): Rows {
  const blocks = () => new Int32Array(count).fill(-1)
  const threes = () => new Float64Array(3 * count)
  return { count, from: blocks(), to: blocks(), shared: blocks(), j: threes(), g: threes(), residual: new Float64Array(count) }
}

export const sumOfSquares = (values: Float64Array): number => values.reduce((sum, r) => sum + r * r, 0)

/** Takes all say from rows, which keep their place. */
export function silence(rows: Rows, silenced: ReadonlySet<number>): void {
  for (const i of silenced) {
    rows.j.fill(0, 3 * i, 3 * i + 3)
    rows.g.fill(0, 3 * i, 3 * i + 3)
    rows.residual[i] = 0
  }
}

/** Which block rows share an equation. */
export function adjacencyOf(rows: Rows, blocks: number): number[][] {
  const sets = Array.from({ length: blocks }, () => new Set<number>())
  const join = (a: number, b: number) => {
    if (a < 0 || b < 0 || a === b) return
    sets[a]!.add(b)
    sets[b]!.add(a)
  }
  for (let i = 0; i < rows.count; i++) {
    join(rows.from[i]!, rows.to[i]!)
    join(rows.from[i]!, rows.shared[i]!)
    join(rows.to[i]!, rows.shared[i]!)
  }
  return sets.map(set => [...set])
}

/** The normal equations N x = b of the rows. Blocks of instruments must come after those of stations. */
export function normalEquations(rows: Rows, pattern: BlockPattern): { matrix: BlockMatrix, right: Float64Array } {
  const matrix = emptyMatrix(pattern)
  const right = new Float64Array(3 * pattern.size)
  const { j, g, residual } = rows
  for (let i = 0; i < rows.count; i++) {
    const from = rows.from[i]!, to = rows.to[i]!, shared = rows.shared[i]!
    const r = residual[i]!
    if (from >= 0) { outer(matrix.diagonal, 9 * from, j, 3 * i, j, 3 * i, 1); along(right, 3 * from, j, 3 * i, -r) }
    if (to >= 0) { outer(matrix.diagonal, 9 * to, j, 3 * i, j, 3 * i, 1); along(right, 3 * to, j, 3 * i, r) }
    if (from >= 0 && to >= 0) outer(matrix.lower, 9 * blockAt(pattern, Math.max(from, to), Math.min(from, to)), j, 3 * i, j, 3 * i, -1)
    if (shared < 0) continue
    outer(matrix.diagonal, 9 * shared, g, 3 * i, g, 3 * i, 1)
    along(right, 3 * shared, g, 3 * i, r)
    if (from >= 0) outer(matrix.lower, 9 * blockAt(pattern, shared, from), g, 3 * i, j, 3 * i, -1)
    if (to >= 0) outer(matrix.lower, 9 * blockAt(pattern, shared, to), g, 3 * i, j, 3 * i, 1)
  }
  return { matrix, right }
}

/** Adds a multiple of one row's coefficients to a right-hand side. */
export function addRow(rows: Rows, i: number, factor: number, right: Float64Array): void {
  if (rows.from[i]! >= 0) along(right, 3 * rows.from[i]!, rows.j, 3 * i, -factor)
  if (rows.to[i]! >= 0) along(right, 3 * rows.to[i]!, rows.j, 3 * i, factor)
  if (rows.shared[i]! >= 0) along(right, 3 * rows.shared[i]!, rows.g, 3 * i, factor)
}

/** The product of one row with a vector of unknowns. */
export function rowTimes(rows: Rows, i: number, x: Float64Array): number {
  return dotAt(rows.j, 3 * i, x, rows.to[i]!) - dotAt(rows.j, 3 * i, x, rows.from[i]!) + dotAt(rows.g, 3 * i, x, rows.shared[i]!)
}

function dotAt(a: Float64Array, i: number, x: Float64Array, block: number): number {
  return block < 0 ? 0 : a[i]! * x[3 * block]! + a[i + 1]! * x[3 * block + 1]! + a[i + 2]! * x[3 * block + 2]!
}

function outer(target: Float64Array, at: number, a: Float64Array, i: number, b: Float64Array, k: number, factor: number): void {
  for (let r = 0; r < 3; r++) {
    const value = factor * a[i + r]!
    if (value === 0) continue
    target[at + 3 * r]! += value * b[k]!
    target[at + 3 * r + 1]! += value * b[k + 1]!
    target[at + 3 * r + 2]! += value * b[k + 2]!
  }
}

function along(target: Float64Array, at: number, a: Float64Array, i: number, factor: number): void {
  target[at]! += factor * a[i]!
  target[at + 1]! += factor * a[i + 1]!
  target[at + 2]! += factor * a[i + 2]!
}
