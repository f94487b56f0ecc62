import { wordsOf } from './keyed-normals.ts'

/**
 * An order for places, coarse to fine: on absolute grids of half the cell size each time, one place per cell that has none yet; within a grid
 * by a hash of its name. So places far apart come first, and a new place hardly moves the others.
 */
export function coarseToFine(xs: Float64Array, ys: Float64Array, keys: readonly string[]): Int32Array {
  const n = xs.length
  const hashes = keys.map(key => wordsOf(key)[0] >>> 0)
  let rest = Array.from({ length: n }, (_, i) => i).sort((a, b) => hashes[a]! - hashes[b]! || a - b)
  const order = new Int32Array(n)
  let placed = 0
  let span = 1
  for (let i = 0; i < n; i++) span = Math.max(span, Math.abs(xs[i]!), Math.abs(ys[i]!))
  for (let cell = 2 ** Math.ceil(Math.log2(span)), level = 0; level < 16 && rest.length > 0; cell /= 2, level++) {
    const cellOf = (i: number) => Math.floor(xs[i]! / cell) * 67_108_864 + Math.floor(ys[i]! / cell)
    const taken = new Set<number>()
    for (let p = 0; p < placed; p++) taken.add(cellOf(order[p]!))
    rest = rest.filter((i) => {
      const at = cellOf(i)
      if (taken.has(at)) return true
      taken.add(at)
      order[placed++] = i
      return false
    })
  }
  order.set(rest, placed)
  return order
}
