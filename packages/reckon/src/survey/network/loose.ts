import type { Rows } from './rows.ts'
import type { BlockFactor } from '../sparse/block-cholesky.ts'
import { addRow, rowTimes } from './rows.ts'
import { solve } from '../sparse/block-cholesky.ts'

/** A station that moves by less than this share when what is loose moves by about one is not loose itself. */
const stillShare = 1e-6

/**
 * Which stations can move without any reading in use noticing.
 * @returns their numbers; empty when the readings determine everything
 */
export function looseStations(factor: BlockFactor, rows: Rows, blockOf: Int32Array, stations: number): Set<number> {
  const { loose } = factor
  if (loose.length === 0) return new Set()
  const size = 3 * factor.pattern.size
  const free = new Float64Array(size)
  loose.forEach((unknown, i) => { free[unknown] = 1 + (i * 0.618034) % 1 }) // unlike amounts, so that no two cancel
  const right = new Float64Array(size)
  for (let i = 0; i < rows.count; i++) {
    const seen = rowTimes(rows, i, free)
    if (seen !== 0) addRow(rows, i, -seen, right)
  }
  const follows = solve(factor, right)
  const moves = new Set<number>()
  for (let node = 0; node < stations; node++) {
    const block = blockOf[node]!
    if (block >= 0 && [0, 1, 2].some(c => Math.abs(follows[3 * block + c]! + free[3 * block + c]!) > stillShare)) moves.add(node)
  }
  return moves
}
