import { bringLeast } from '../linear/bring-least.ts'
import type { NeighbourGrid } from './neighbour-grid.ts'
import type { Samples } from '../samples.ts'
import { middleOf, MOST_IN_TILE } from './tiles.ts'

/** Rounding of distances, relative: what is this close to a limit is looked at properly. */
const SLACK = 1e-9

/**
 * The k nearest samples of every target of a tile, told apart into a core that all of them share and extras that only some use.
 *
 * The distance to the k-th nearest sample changes no faster than the target moves. So with r_k that distance at the tile's middle and
 * d the tile's radius, samples within r_k - 2 d of the middle are near to all its targets and those beyond r_k + 2 d to none; only the
 * ring between is looked at target by target.
 */
export class Neighbourhood {
  /** Samples of the core, then the extras. */
  readonly union: Int32Array
  core = 0
  size = 0
  /** For target i of the tile, its extras as positions in `union`, ascending: extras[i * k] ... of extraCount[i]. */
  readonly extras: Int32Array
  readonly extraCount = new Int32Array(MOST_IN_TILE)
  private readonly ring: Int32Array
  private readonly uses: Int32Array
  private readonly keys: Float64Array
  private readonly labels: Int32Array
  private readonly picked: Int32Array

  constructor(private readonly samples: Samples, private readonly grid: NeighbourGrid, private readonly k: number) {
    const n = samples.count
    this.union = new Int32Array(n)
    this.ring = new Int32Array(n)
    this.uses = new Int32Array(n)
    this.keys = new Float64Array(n)
    this.labels = new Int32Array(n)
    this.extras = new Int32Array(MOST_IN_TILE * k)
    this.picked = new Int32Array(MOST_IN_TILE * k)
  }

  /** Finds the neighbourhoods of targets order[from] .. order[to - 1], k below the number of samples. */
  find(xs: Float64Array, ys: Float64Array, order: Int32Array, from: number, to: number): void {
    const { grid, k, union, ring, uses, picked } = this
    const middle = middleOf(xs, ys, order, from, to)
    grid.nearest(middle.x, middle.y, k)
    let square = 0
    for (let i = 0; i < k; i++) square = Math.max(square, grid.squares[i]!)
    const reach = Math.sqrt(square)
    const count = grid.within(middle.x, middle.y, (reach + 2 * middle.radius) * (1 + SLACK))
    const sureBelow = Math.max(0, reach - 2 * middle.radius - SLACK * reach) ** 2
    let sure = 0
    let ringCount = 0
    for (let i = 0; i < count; i++) {
      const sample = grid.found[i]!
      if (grid.squares[i]! < sureBelow) union[sure++] = sample
      else ring[ringCount++] = sample
    }
    uses.fill(0, 0, ringCount)
    // By index, so that of two at one distance the earlier sample is picked.
    sortFew(ring, 0, ringCount)
    const open = k - sure
    for (let i = 0; i < ringCount; i++) this.labels[i] = i
    for (let t = from; t < to; t++) this.pick(xs[order[t]!]!, ys[order[t]!]!, ringCount, open, (t - from) * k)
    this.number(sure, ringCount, to - from)
    for (let i = 0; i < to - from; i++) {
      let extra = 0
      for (let j = 0; j < open; j++) {
        const position = uses[picked[i * k + j]!]!
        if (position >= this.core) this.extras[i * k + extra++] = position
      }
      sortFew(this.extras, i * k, extra)
      this.extraCount[i] = extra
    }
  }

  /** Picks the `open` nearest of the ring for one target, and counts their uses. `labels` come in as the target before left them. */
  private pick(x: number, y: number, ringCount: number, open: number, at: number): void {
    const { ring, keys, labels, uses, picked } = this
    const { xs, ys } = this.samples
    for (let i = 0; i < ringCount; i++) {
      const sample = ring[labels[i]!]!
      const dx = xs[sample]! - x
      const dy = ys[sample]! - y
      keys[i] = dx * dx + dy * dy
    }
    if (open < ringCount) {
      if (at === 0) bringLeast(keys, labels, open, ringCount)
      else exchangeFew(keys, labels, open, ringCount)
    }
    for (let j = 0; j < open; j++) {
      picked[at + j] = labels[j]!
      uses[labels[j]!]! += 1
    }
  }

  /** Lines up the union: the sure ones, ring members that every target uses, the rest in use. `uses` becomes positions in it. */
  private number(sure: number, ringCount: number, targets: number): void {
    const { union, ring, uses } = this
    let position = sure
    for (const everyone of [true, false]) {
      for (let i = 0; i < ringCount; i++) {
        const used = uses[i]!
        if (used <= 0 || (used === targets) !== everyone) continue
        union[position] = ring[i]!
        // Marked as placed by a negative number until both rounds are done.
        uses[i] = -1 - position++
      }
      if (everyone) this.core = position
    }
    for (let i = 0; i < ringCount; i++) uses[i] = -1 - uses[i]!
    this.size = position
  }
}

/** Insertion sort of a few whole numbers in place: quicker here than a call of the library's. */
function sortFew(values: Int32Array, from: number, count: number): void {
  for (let i = from + 1; i < from + count; i++) {
    const value = values[i]!
    let j = i - 1
    for (; j >= from && values[j]! > value; j--) values[j + 1] = values[j]!
    values[j + 1] = value
  }
}

/**
 * Brings the k least keys to the front, as `bringLeast` does, by exchanging the worst of the front with the best of the rest until they
 * stand right: for a front that is nearly right already, as that of a target close by is.
 */
function exchangeFew(keys: Float64Array, labels: Int32Array, k: number, count: number): void {
  for (;;) {
    let worst = 0
    for (let i = 1; i < k; i++) if (keys[i]! > keys[worst]! || (keys[i] === keys[worst] && labels[i]! > labels[worst]!)) worst = i
    let best = k
    for (let i = k + 1; i < count; i++) if (keys[i]! < keys[best]! || (keys[i] === keys[best] && labels[i]! < labels[best]!)) best = i
    const [high, low] = [keys[worst]!, keys[best]!]
    if (k === 0 || high < low || (high === low && labels[worst]! < labels[best]!)) return
    const label = labels[worst]!
    keys[worst] = low
    keys[best] = high
    labels[worst] = labels[best]!
    labels[best] = label
  }
}
