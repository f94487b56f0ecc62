import { finite, InputError, positive } from '../core/index.ts'
import type { Sample } from './model.ts'

/** Variogram by direction and distance at once, on a square grid of separations; the middle cell holds separation zero. */
export interface VariogramMap {
  /** Cells along each side, odd. */
  readonly side: number
  readonly cell: number
  /** Row-major from the south-west: cell [row * side + column] holds separations about ((column - half) cell, (row - half) cell). */
  readonly pairs: Float64Array
  /** gamma of each cell; 0 where there are no pairs: look at `pairs`. */
  readonly gamma: Float64Array
}

/** Cells along a side at most. */
const MOST = 401

/**
 * The variogram map: every pair counted once each way, by its separation vector, so that a stretched pattern shows the long axis.
 * @param points  rows of [x, y, value]; not modified
 * @param cutoff  the map reaches this far along each axis
 * @param cell  width of a cell
 * @throws InputError on a coordinate or value that is not finite, a cutoff or cell not above zero, or more than 401 cells along a side
 * Source: Isaaks, E. H. and Srivastava, R. M. (1989) An introduction to applied geostatistics, ch. 7 (from memory).
 */
export function variogramMap(points: readonly Sample[], cutoff: number, cell: number): VariogramMap {
  positive(cutoff, 'cutoff', 'a distance above zero')
  positive(cell, 'cell', 'a width above zero')
  points.forEach((point, i) => point.forEach((value, j) => finite(value, `points[${i}][${j}]`)))
  const half = Math.ceil(cutoff / cell - 0.5)
  const side = 2 * half + 1
  if (side > MOST) throw new InputError('cell', cell, `a width that makes at most ${MOST} cells along a side`)
  const pairs = new Float64Array(side * side)
  const gamma = new Float64Array(side * side)
  for (let a = 0; a < points.length; a++) {
    for (let b = a + 1; b < points.length; b++) {
      const [dx, dy] = [points[b]![0] - points[a]![0], points[b]![1] - points[a]![1]]
      const [column, row] = [Math.round(dx / cell), Math.round(dy / cell)]
      if (Math.abs(column) > half || Math.abs(row) > half || (dx === 0 && dy === 0)) continue
      const value = 0.5 * (points[b]![2] - points[a]![2]) ** 2
      for (const sign of [1, -1]) {
        const at = (half + sign * row) * side + half + sign * column
        pairs[at]! += 1
        gamma[at]! += value
      }
    }
  }
  for (let at = 0; at < pairs.length; at++) if (pairs[at]! > 0) gamma[at]! /= pairs[at]!
  return { side, cell, pairs, gamma }
}
