/** Up to so many places are looked through one by one; beyond, a grid of cells is searched ring by ring. */
const few = 400

/** For the place at each step of an order, the nearest of those that come before it. */
export interface Earlier {
  /** counts[step] of them from neighbours[step * most]; numbers of places, nearest first. */
  readonly most: number
  readonly counts: Int32Array
  readonly neighbours: Int32Array
}

/** The nearest earlier places of every place in an order, by plain distance; of two at one distance the one that came first. */
export function nearestEarlier(xs: Float64Array, ys: Float64Array, order: Int32Array, most: number): Earlier {
  const n = order.length
  const counts = new Int32Array(n)
  const neighbours = new Int32Array(n * most)
  const distances = new Float64Array(most)
  const { cell, columns, rows, west, south } = gridOf(xs, ys)
  const head = new Int32Array(columns * rows).fill(-1)
  const next = new Int32Array(n).fill(-1)
  const columnOf = (i: number) => Math.min(columns - 1, Math.floor((xs[i]! - west) / cell))
  const rowOf = (i: number) => Math.min(rows - 1, Math.floor((ys[i]! - south) / cell))
  for (let step = 0; step < n; step++) {
    const i = order[step]!, base = step * most
    const x = xs[i]!, y = ys[i]!
    let count = 0
    const take = (j: number) => {
      const d = (xs[j]! - x) ** 2 + (ys[j]! - y) ** 2
      if (count === most && d >= distances[count - 1]!) return
      let at = count < most ? count++ : count - 1
      while (at > 0 && distances[at - 1]! > d) {
        distances[at] = distances[at - 1]!
        neighbours[base + at] = neighbours[base + at - 1]!
        at--
      }
      distances[at] = d
      neighbours[base + at] = j
    }
    const [column, row] = [columnOf(i), rowOf(i)]
    if (step <= few) for (let p = 0; p < step; p++) take(order[p]!)
    else {
      for (let ring = 0; ring < columns + rows; ring++) {
        if (count === most && distances[count - 1]! < ((ring - 1) * cell) ** 2 && ring > 1) break
        for (let r = Math.max(0, row - ring); r <= Math.min(rows - 1, row + ring); r++) {
          const edge = Math.abs(r - row) === ring
          for (let c = column - ring; c <= column + ring; c += edge ? 1 : Math.max(1, 2 * ring)) {
            if (c < 0 || c >= columns) continue
            for (let j = head[r * columns + c]!; j >= 0; j = next[j]!) take(j)
          }
        }
      }
    }
    counts[step] = count
    const at = row * columns + column
    next[i] = head[at]!
    head[at] = i
  }
  return { most, counts, neighbours }
}

function gridOf(xs: Float64Array, ys: Float64Array) {
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity]
  for (let i = 0; i < xs.length; i++) {
    west = Math.min(west, xs[i]!); east = Math.max(east, xs[i]!)
    south = Math.min(south, ys[i]!); north = Math.max(north, ys[i]!)
  }
  const [wide, high] = [east - west, north - south]
  // About four places to a cell, and never more cells along a side than places.
  const cell = Math.max(2 * Math.sqrt(Math.max(wide * high, 0) / Math.max(1, xs.length)), Math.max(wide, high) / Math.max(1, xs.length)) || 1
  return { cell, west, south, columns: Math.floor(wide / cell) + 1 || 1, rows: Math.floor(high / cell) + 1 || 1 }
}
