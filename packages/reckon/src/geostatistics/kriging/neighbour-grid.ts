import { bringLeast } from '../linear/bring-least.ts'

/** Points per cell aimed at: a few, so that neither empty cells nor long lists are walked. */
const PER_CELL = 2

/**
 * The k nearest of a set of points by plain Euclidean distance; the set may grow. Equal distances: the lower index first.
 * A square grid over all points that can ever be in the set, remade finer as the set doubles.
 */
export class NeighbourGrid {
  /** Result of the last `nearest`: indices, in no particular order, and their squared distances. */
  readonly found: Int32Array
  readonly squares: Float64Array
  private readonly next: Int32Array
  private heads = new Int32Array(0)
  private readonly members: Int32Array
  private size = 0
  private columns = 0
  private rows = 0
  private cell = 0
  private readonly west: number
  private readonly south: number
  private readonly width: number
  private readonly height: number

  /** @param xs, ys  coordinates of every point that may be added; not modified, not copied */
  constructor(private readonly xs: Float64Array, private readonly ys: Float64Array) {
    const n = xs.length
    this.next = new Int32Array(n)
    this.members = new Int32Array(n)
    this.found = new Int32Array(n)
    this.squares = new Float64Array(n)
    let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity]
    for (let i = 0; i < n; i++) {
      west = Math.min(west, xs[i]!)
      east = Math.max(east, xs[i]!)
      south = Math.min(south, ys[i]!)
      north = Math.max(north, ys[i]!)
    }
    this.west = west
    this.south = south
    this.width = east - west
    this.height = north - south
  }

  /** A grid that holds all its points. */
  static of(xs: Float64Array, ys: Float64Array): NeighbourGrid {
    const grid = new NeighbourGrid(xs, ys)
    for (let i = 0; i < xs.length; i++) grid.members[i] = i
    grid.size = xs.length
    grid.remake(xs.length)
    return grid
  }

  add(index: number): void {
    this.members[this.size++] = index
    if (this.size * 2 > PER_CELL * 2 * this.columns * this.rows && this.size >= 2 * PER_CELL || this.size === 1) this.remake(2 * this.size)
    else this.link(index)
  }

  /** Lays the grid for about `count` points and puts the members in. */
  private remake(count: number): void {
    const area = this.width * this.height
    const longest = Math.max(this.width, this.height)
    // On a line the cells go along it; at one spot there is one cell.
    this.cell = area > 0 ? Math.max(Math.sqrt(area * PER_CELL / count), longest * PER_CELL / count) : longest * PER_CELL / count
    if (!(this.cell > 0)) this.cell = 1
    this.columns = Math.floor(this.width / this.cell) + 1
    this.rows = Math.floor(this.height / this.cell) + 1
    this.heads = new Int32Array(this.columns * this.rows).fill(-1)
    for (let i = this.size - 1; i >= 0; i--) this.link(this.members[i]!)
  }

  private link(index: number): void {
    const column = Math.floor((this.xs[index]! - this.west) / this.cell)
    const row = Math.floor((this.ys[index]! - this.south) / this.cell)
    const at = row * this.columns + column
    this.next[index] = this.heads[at]!
    this.heads[at] = index
  }

  /** Finds the k nearest to (x, y), point `except` left out; all when there are fewer. Returns how many stand in `found`. */
  nearest(x: number, y: number, k: number, except = -1): number {
    const { columns, rows, cell, west, south, squares } = this
    if (this.size === 0) return 0
    const cx = clamp(Math.floor((x - west) / cell), columns - 1)
    const cy = clamp(Math.floor((y - south) / cell), rows - 1)
    let count = 0
    for (let ring = 0; ; ring++) {
      const [left, right, low, high] = [cx - ring, cx + ring, cy - ring, cy + ring]
      for (let row = Math.max(low, 0); row <= Math.min(high, rows - 1); row++) {
        const step = row === low || row === high ? 1 : 2 * ring
        for (let column = left; column <= right; column += step) {
          if (column >= 0 && column < columns) count = this.collect(row * columns + column, x, y, except, count)
        }
      }
      // Everything nearer than the nearest side beyond which cells remain has been seen.
      const seen = Math.min(
        left > 0 ? x - (west + left * cell) : Infinity, right < columns - 1 ? west + (right + 1) * cell - x : Infinity,
        low > 0 ? y - (south + low * cell) : Infinity, high < rows - 1 ? south + (high + 1) * cell - y : Infinity,
      )
      if (seen === Infinity) break
      if (count < k || seen <= 0) continue
      const limit = seen * seen
      let sure = 0
      for (let i = 0; i < count; i++) if (squares[i]! < limit) sure++
      if (sure >= k) break
    }
    if (count > k) bringLeast(squares, this.found, k, count)
    return Math.min(count, k)
  }

  private collect(at: number, x: number, y: number, except: number, from: number): number {
    const { xs, ys, next, found, squares } = this
    let count = from
    for (let i = this.heads[at]!; i >= 0; i = next[i]!) {
      if (i === except) continue
      const dx = xs[i]! - x
      const dy = ys[i]! - y
      found[count] = i
      squares[count++] = dx * dx + dy * dy
    }
    return count
  }

  /** Finds all within `radius` of (x, y), those on the circle included. Returns how many stand in `found`. */
  within(x: number, y: number, radius: number): number {
    const { columns, rows, cell, west, south, squares, found } = this
    if (this.size === 0) return 0
    let count = 0
    const [left, right] = [clamp(Math.floor((x - radius - west) / cell), columns - 1), clamp(Math.floor((x + radius - west) / cell), columns - 1)]
    const [low, high] = [clamp(Math.floor((y - radius - south) / cell), rows - 1), clamp(Math.floor((y + radius - south) / cell), rows - 1)]
    for (let row = low; row <= high; row++) {
      for (let column = left; column <= right; column++) count = this.collect(row * columns + column, x, y, -1, count)
    }
    const limit = radius * radius
    let kept = 0
    for (let i = 0; i < count; i++) {
      if (squares[i]! > limit) continue
      squares[kept] = squares[i]!
      found[kept++] = found[i]!
    }
    return kept
  }
}

function clamp(value: number, most: number): number {
  return value < 0 ? 0 : value > most ? most : value
}
