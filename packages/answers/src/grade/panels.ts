import type { VeinPoint } from '@lodebook/reckon'
import { sideOfCut } from '../vein/fault.ts'
import type { CutLine } from '../vein/fault.ts'
import { areaOf, boxed, contains as inside, holds } from './rings.ts'

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
  /** Keeps its name when others come and go. */
  readonly key: string
}

export interface GroundInput {
  readonly samples: readonly VeinPoint[]
  readonly reach: number
  readonly size: number
  /** Rings of ground already taken: stopes and the headings themselves. */
  readonly taken: readonly (readonly VeinPoint[])[]
  /** The line that ends the vein, and the side to keep. */
  readonly most?: number
  readonly cut?: (CutLine & { readonly keep: 1 | -1 }) | undefined
}

/** More panels than this and they are made larger. */
const usualMost = 2500
/** A panel is looked at in this many strips each way to see how much of it is left. */
const strips = 6

/**
 * Panels over the ground within reach of a sample, on a lattice square to the strike, named by column letter and row number.
 * What has been taken, and what lies beyond the fault, is not counted.
 */
export function groundPanels(input: GroundInput): readonly Ground[] {
  if (input.samples.length === 0) return []
  const { most = usualMost } = input
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
  const there = stillThere(taken, cut)
  const panels: Ground[] = []
  for (let row = firstRow; row < end('down'); row++) {
    for (let column = firstColumn; column < end('along'); column++) {
      const [west, top] = [column * size, row * size]
      const centre = { along: west + size / 2, down: top + size / 2 }
      const nearest = nearestOf(samples, centre)
      if (nearest > reach) continue
      const { share, points } = remains(west, top, size, there)
      if (share === 0) continue
      panels.push({
        key: `${column},${row},${size.toFixed(3)}`, name: `${columnName(column - firstColumn)}${row - firstRow + 1}`, centre, nearest, points, area: share * size * size,
        corners: [{ along: west, down: top }, { along: west + size, down: top }, { along: west + size, down: top + size }, { along: west, down: top + size }],
      })
    }
  }
  return panels
}

/** Whether ground is still there: not taken, and on the side of the fault that is kept. */
function stillThere(taken: GroundInput['taken'], cut: GroundInput['cut']): (p: VeinPoint) => boolean {
  const rings = taken.map(boxed)
  return p => !rings.some(ring => holds(ring, p)) && (!cut || sideOfCut(cut, p) * cut.keep >= 0)
}

function nearestOf(samples: readonly VeinPoint[], to: VeinPoint): number {
  let least = Infinity
  for (const s of samples) least = Math.min(least, (s.along - to.along) ** 2 + (s.down - to.down) ** 2)
  return Math.sqrt(least)
}

/** A panel that the crew drew, less what has been taken or lies beyond the fault; undefined when nothing of it is left. */
export function drawnGround(name: string, key: string, ring: readonly VeinPoint[], { samples, taken, cut }: Pick<GroundInput, 'samples' | 'taken' | 'cut'>): Ground | undefined {
  const there = stillThere(taken, cut), box = boxed(ring), whole = areaOf(ring)
  if (!(whole > 0)) return undefined
  // About forty points over it, on a square lattice.
  const step = Math.sqrt(whole / 40), points: VeinPoint[] = []
  let within = 0
  for (let down = box.top + step / 2; down < box.bottom; down += step) {
    for (let along = box.left + step / 2; along < box.right; along += step) {
      const p = { along, down }
      if (!inside(ring, p)) continue
      within++
      if (there(p)) points.push(p)
    }
  }
  if (points.length === 0) return undefined
  const middle = (of: 'along' | 'down') => points.reduce((sum, p) => sum + p[of], 0) / points.length
  const centre = { along: middle('along'), down: middle('down') }
  return { name, key, corners: ring, centre, area: whole * points.length / within, points, nearest: nearestOf(samples, centre) }
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

export { contains } from './rings.ts'
