/** Targets gathered into tiles: those of tile i are order[starts[i]] .. order[starts[i + 1] - 1]; all lie close together. */
export interface Tiles { readonly order: Int32Array, readonly starts: Int32Array }

/** A tile holds no more targets than this. */
export const MOST_IN_TILE = 64

/** Cells along a side at most: their numbers, times the count of places, then stay whole in a double. */
const MOST_CELLS = 2 ** 13

/** Gathers places into the cells of a square grid of this side, and cuts what is crowded into tiles of at most MOST_IN_TILE. */
export function tilesOf(xs: Float64Array, ys: Float64Array, side: number): Tiles {
  const n = xs.length
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity]
  for (let i = 0; i < n; i++) {
    west = Math.min(west, xs[i]!)
    east = Math.max(east, xs[i]!)
    south = Math.min(south, ys[i]!)
    north = Math.max(north, ys[i]!)
  }
  const cell = Math.max(side, (east - west) / MOST_CELLS, (north - south) / MOST_CELLS)
  const columns = cell > 0 ? Math.floor((east - west) / cell) + 1 : 1
  // One number holds cell and place, so that sorting numbers sorts places by cell.
  const keys = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    const at = cell > 0 ? Math.floor((ys[i]! - south) / cell) * columns + Math.floor((xs[i]! - west) / cell) : 0
    keys[i] = at * n + i
  }
  keys.sort()
  const order = new Int32Array(n)
  const starts: number[] = []
  let before = -1
  for (let i = 0; i < n; i++) {
    const at = Math.floor(keys[i]! / n)
    order[i] = keys[i]! - at * n
    if (at !== before || i - starts.at(-1)! >= MOST_IN_TILE) starts.push(i)
    before = at
  }
  starts.push(n)
  return { order, starts: Int32Array.from(starts) }
}

/** The middle of some places and the distance to the furthest of them. */
export function middleOf(xs: Float64Array, ys: Float64Array, order: Int32Array, from: number, to: number): { x: number, y: number, radius: number } {
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity]
  for (let i = from; i < to; i++) {
    const place = order[i]!
    west = Math.min(west, xs[place]!)
    east = Math.max(east, xs[place]!)
    south = Math.min(south, ys[place]!)
    north = Math.max(north, ys[place]!)
  }
  const [x, y] = [(west + east) / 2, (south + north) / 2]
  let radius2 = 0
  for (let i = from; i < to; i++) radius2 = Math.max(radius2, (xs[order[i]!]! - x) ** 2 + (ys[order[i]!]! - y) ** 2)
  return { x, y, radius: Math.sqrt(radius2) }
}
