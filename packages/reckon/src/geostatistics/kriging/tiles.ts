/** Targets gathered into tiles: those of tile i are order[starts[i]] .. order[starts[i + 1] - 1]; all lie close together. */
export interface Tiles { readonly order: Int32Array, readonly starts: Int32Array }

/** A tile holds no more targets than this. */
export const MOST_IN_TILE = 64

/** Gathers places into the cells of a square grid of this side, and cuts what is crowded into tiles of at most MOST_IN_TILE. */
export function tilesOf(xs: Float64Array, ys: Float64Array, side: number): Tiles {
  const n = xs.length
  const west = xs.reduce((least, x) => Math.min(least, x), Infinity)
  const south = ys.reduce((least, y) => Math.min(least, y), Infinity)
  const column = Float64Array.from(xs, x => side > 0 ? Math.floor((x - west) / side) : 0)
  const row = Float64Array.from(ys, y => side > 0 ? Math.floor((y - south) / side) : 0)
  const order = Int32Array.from({ length: n }, (_, i) => i).sort((a, b) => row[a]! - row[b]! || column[a]! - column[b]! || a - b)
  const starts: number[] = []
  for (let i = 0; i < n; i++) {
    const [now, before] = [order[i]!, order[i - 1]!]
    if (i === 0 || row[now] !== row[before] || column[now] !== column[before] || i - starts.at(-1)! >= MOST_IN_TILE) starts.push(i)
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
