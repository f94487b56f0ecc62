import type { VeinPoint } from '@lodebook/reckon'
import { sideOfCut } from '../vein/fault.ts'
import type { CutLine } from '../vein/fault.ts'

/** A piece of the vein, as the parts of it that are still there and on the portal's side of the fault. */
export interface Ground {
  readonly name: string
  readonly corners: readonly VeinPoint[]
  readonly centre: VeinPoint
  /** m² still there. */
  readonly area: number
  /** Points that stand for what is still there. */
  readonly points: readonly VeinPoint[]
  /** m to the nearest sample. */
  readonly nearest: number
}

export interface GroundInput {
  readonly samples: readonly VeinPoint[]
  readonly reach: number
  readonly size: number
  /** Rings of ground already taken: stopes and the headings themselves. */
  readonly taken: readonly (readonly VeinPoint[])[]
  /** The line that ends the vein, and the side to keep. */
  readonly cut?: (CutLine & { readonly keep: 1 | -1 }) | undefined
}

/** More panels than this and they are made larger: a crew reads a drawing, not a table of thousands. */
const most = 300
/** A panel is looked at in this many strips each way to see how much of it is left. */
const strips = 6

/**
 * Panels over the ground within reach of a sample, on a lattice square to the strike, named by column letter and row number.
 * What has been taken, and what lies beyond the fault, is not counted.
 */
export function groundPanels(input: GroundInput): readonly Ground[] {
  if (input.samples.length === 0) return []
  let size = input.size
  for (;;) {
    const panels = lattice(input, size)
    if (panels.length <= most) return panels
    size *= Math.sqrt(panels.length / most) * 1.02
  }
}

function lattice({ samples, reach, taken, cut }: GroundInput, size: number): readonly Ground[] {
  const start = (key: 'along' | 'down') => Math.floor((Math.min(...samples.map(s => s[key])) - reach) / size)
  const end = (key: 'along' | 'down') => Math.ceil((Math.max(...samples.map(s => s[key])) + reach) / size)
  const [firstColumn, firstRow] = [start('along'), start('down')]
  const there = (p: VeinPoint) => !taken.some(ring => contains(ring, p)) &&
    (!cut || sideOfCut(cut, p) * cut.keep >= 0)
  const panels: Ground[] = []
  for (let row = firstRow; row < end('down'); row++) {
    for (let column = firstColumn; column < end('along'); column++) {
      const [west, top] = [column * size, row * size]
      const centre = { along: west + size / 2, down: top + size / 2 }
      const nearest = Math.min(...samples.map(s => Math.hypot(s.along - centre.along, s.down - centre.down)))
      if (nearest > reach) continue
      const { share, points } = remains(west, top, size, there)
      if (share === 0) continue
      panels.push({
        name: `${columnName(column - firstColumn)}${row - firstRow + 1}`, centre, nearest, points, area: share * size * size,
        corners: [{ along: west, down: top }, { along: west + size, down: top }, { along: west + size, down: top + size }, { along: west, down: top + size }],
      })
    }
  }
  return panels
}

/** How much of a square is still there, and one point for each of its quarters that is. */
function remains(west: number, top: number, size: number, there: (p: VeinPoint) => boolean): { share: number, points: VeinPoint[] } {
  const step = size / strips
  const quarters = new Map<number, { along: number, down: number, count: number }>()
  let count = 0
  for (let i = 0; i < strips; i++) {
    for (let j = 0; j < strips; j++) {
      const p = { along: west + (i + 0.5) * step, down: top + (j + 0.5) * step }
      if (!there(p)) continue
      count++
      const key = (i < strips / 2 ? 0 : 1) + (j < strips / 2 ? 0 : 2)
      const quarter = quarters.get(key) ?? { along: 0, down: 0, count: 0 }
      quarters.set(key, { along: quarter.along + p.along, down: quarter.down + p.down, count: quarter.count + 1 })
    }
  }
  return { share: count / (strips * strips), points: [...quarters.values()].map(q => ({ along: q.along / q.count, down: q.down / q.count })) }
}

const columnName = (index: number): string => (index >= 26 ? String.fromCharCode(64 + Math.floor(index / 26)) : '') + String.fromCharCode(65 + index % 26)

/** Whether a point lies inside a ring, by the even-odd rule. */
export function contains(ring: readonly VeinPoint[], p: VeinPoint): boolean {
  let inside = false
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!
    if ((a.down > p.down) !== (b.down > p.down) && p.along < a.along + (b.along - a.along) * (p.down - a.down) / (b.down - a.down)) inside = !inside
  })
  return inside
}
