/** A label that wants to stand by its mark. Pixels. */
export interface Wanted {
  readonly id: string
  /** The mark's middle and how far it reaches. */
  readonly x: number
  readonly y: number
  readonly reach: number
  readonly width: number
  readonly height: number
  /** Higher is placed first. */
  readonly weight: number
}

export interface Placed { readonly id: string, readonly x: number, readonly y: number }
interface Box { readonly x0: number, readonly y0: number, readonly x1: number, readonly y1: number }

// Where a draughtsman tries first: right above, right, right below, then the left, then above and below.
const tries: readonly (readonly [dx: number, dy: number, anchorX: 0 | 0.5 | 1, anchorY: 0 | 0.5 | 1])[] = [
  [0.8, -0.8, 0, 1], [1, 0, 0, 0.5], [0.8, 0.8, 0, 0], [-0.8, -0.8, 1, 1], [-1, 0, 1, 0.5], [-0.8, 0.8, 1, 0], [0, -1, 0.5, 1], [0, 1, 0.5, 0],
]

/**
 * Places labels so that none covers another or a mark; those for which there is no room at this zoom are left off.
 * @returns top-left corners of the labels placed
 */
export function placeLabels(wanted: readonly Wanted[], width: number, height: number, gap = 3): readonly Placed[] {
  const taken = new Grid(), placed: Placed[] = []
  for (const w of wanted) taken.add({ x0: w.x - w.reach, y0: w.y - w.reach, x1: w.x + w.reach, y1: w.y + w.reach })
  for (const w of [...wanted].sort((a, b) => b.weight - a.weight)) {
    for (const [dx, dy, ax, ay] of tries) {
      const x0 = w.x + dx * (w.reach + gap) - ax * w.width, y0 = w.y + dy * (w.reach + gap) - ay * w.height
      const box = { x0, y0, x1: x0 + w.width, y1: y0 + w.height }
      if (box.x0 < 0 || box.y0 < 0 || box.x1 > width || box.y1 > height || taken.hits(box)) continue
      taken.add(box)
      placed.push({ id: w.id, x: x0, y: y0 })
      break
    }
  }
  return placed
}

/** Boxes in square cells, so that a label is held only against its neighbours. */
class Grid {
  readonly #cell = 64
  readonly #cells = new Map<string, Box[]>()
  #keys({ x0, y0, x1, y1 }: Box): readonly string[] {
    const keys: string[] = []
    for (let i = Math.floor(x0 / this.#cell); i <= Math.floor(x1 / this.#cell); i++) {
      for (let j = Math.floor(y0 / this.#cell); j <= Math.floor(y1 / this.#cell); j++) keys.push(`${i},${j}`)
    }
    return keys
  }

  add(box: Box): void {
    for (const key of this.#keys(box)) {
      const cell = this.#cells.get(key)
      if (cell) cell.push(box); else this.#cells.set(key, [box])
    }
  }

  hits(box: Box): boolean {
    for (const key of this.#keys(box))
      if (this.#cells.get(key)?.some(o => o.x0 < box.x1 && box.x0 < o.x1 && o.y0 < box.y1 && box.y0 < o.y1)) return true
    return false
  }
}
