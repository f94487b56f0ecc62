import type { Draws } from '../../core/index.ts'

/** Halvings of the cell: past a millionth of the extent the rest come as they were shuffled. */
const LEVELS = 20

/**
 * An order for visiting places, coarse to fine: on grids of half the cell size each time, one place per cell that has none yet,
 * in a random order within each grid. Early places are far apart and fix the large shapes, late ones fill in between near neighbours,
 * which is what makes a few nearest neighbours enough.
 */
export function coarseToFinePath(xs: Float64Array, ys: Float64Array, draws: Draws): Int32Array {
  const n = xs.length
  const [west, east] = extent(xs)
  const [south, north] = extent(ys)
  const longest = Math.max(east - west, north - south)
  const path = new Int32Array(n)
  let placed = 0
  let rest = shuffled(n, draws)
  for (let level = 0; level < LEVELS && rest.length > 0 && longest > 0; level++) {
    const cell = longest / 2 ** level
    const columns = Math.floor((east - west) / cell) + 1
    const cellOf = (place: number) => Math.floor((ys[place]! - south) / cell) * columns + Math.floor((xs[place]! - west) / cell)
    const taken = new Set<number>()
    for (let p = 0; p < placed; p++) taken.add(cellOf(path[p]!))
    rest = rest.filter((place) => {
      const at = cellOf(place)
      if (taken.has(at)) return true
      taken.add(at)
      path[placed++] = place
      return false
    })
  }
  path.set(rest, placed)
  return path
}

function shuffled(n: number, draws: Draws): Int32Array {
  const order = Int32Array.from({ length: n }, (_, i) => i)
  for (let i = n - 1; i > 0; i--) {
    const j = Math.floor(draws.uniform() * (i + 1))
    const kept = order[i]!
    order[i] = order[j]!
    order[j] = kept
  }
  return order
}

function extent(values: Float64Array): [number, number] {
  let [low, high] = [Infinity, -Infinity]
  for (const value of values) {
    low = Math.min(low, value)
    high = Math.max(high, value)
  }
  return [low, high]
}
