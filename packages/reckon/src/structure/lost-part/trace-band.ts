import { positive } from '../../core/index.ts'
import { quantiles } from '../../statistics/index.ts'
import type { SheetLine, SheetPoint } from './trace.ts'

/** Where lines drawn by chance run on a sheet. */
export interface TraceBand {
  /** Four in five lines run between these two; one in ten beyond either. Same number of points in each, side by side. */
  readonly low: readonly SheetPoint[]
  readonly high: readonly SheetPoint[]
  /** Half run on either side. */
  readonly middle: readonly SheetPoint[]
  /** Twenty of the lines, equally likely, to be drawn as cases; less those that pass the window by. */
  readonly cases: readonly (readonly [SheetPoint, SheetPoint])[]
}

/** What of a sheet is wanted: so far either way from a place, in the sheet's unit. */
export interface SheetWindow { readonly centre: SheetPoint, readonly reach: number }

const points = 9 // the band's edges bend very little
const casesShown = 20

/**
 * The band in which lines run: quantiles of their distance from their common course, taken square to it.
 *
 * It begins where half of the lines have begun, and runs to the end of the window; a window in which they have not begun gets their first stretch.
 * @returns undefined without lines
 * @throws InputError
 */
export function traceBand(lines: readonly SheetLine[], { centre, reach }: SheetWindow): TraceBand | undefined {
  positive(reach, 'reach')
  if (lines.length === 0) return undefined
  const [dx, dy] = courseOf(lines)
  const [ox, oy] = centre
  const along = ([x, y]: SheetPoint) => (x - ox) * dx + (y - oy) * dy
  const aside = ([x, y]: SheetPoint) => (y - oy) * dx - (x - ox) * dy
  const onSheet = (u: number, v: number): SheetPoint => [ox + u * dx - v * dy, oy + u * dy + v * dx]
  const forward = ({ direction }: SheetLine) => direction[0] * dx + direction[1] * dy
  const begun = lines.every(l => l.ends) ? quantiles(lines.map(l => along(l.point)), [0.5])[0]! : -Infinity
  const from = Math.max(begun, -reach)
  const to = Math.max(reach, from + reach)
  const rows = Array.from({ length: points }, (_, k) => {
    const u = from + (to - from) * k / (points - 1)
    const there = lines.flatMap((line) => {
      const ahead = u - along(line.point)
      if ((line.ends && ahead < 0) || forward(line) === 0) return []
      return [aside(line.point) + ahead * (line.direction[1] * dx - line.direction[0] * dy) / forward(line)]
    })
    const [low, middle, high] = quantiles(there, [0.1, 0.5, 0.9]) as [number, number, number]
    return { low: onSheet(u, low), middle: onSheet(u, middle), high: onSheet(u, high) }
  })
  const shown = Math.min(casesShown, lines.length)
  return {
    low: rows.map(r => r.low), middle: rows.map(r => r.middle), high: rows.map(r => r.high),
    cases: Array.from({ length: shown }, (_, i) => lines[Math.floor((i + 0.5) * lines.length / shown)]!)
      .flatMap((line) => { const part = stretchOf(line, { centre, reach: Math.max(reach, to) }); return part ? [part] : [] }),
  }
}

/** The part of a line that a round window shows; undefined when it passes by. */
export function stretchOf(line: SheetLine, { centre, reach }: SheetWindow): readonly [SheetPoint, SheetPoint] | undefined {
  const { point: [x, y], direction: [dx, dy], ends } = line
  const middle = (centre[0] - x) * dx + (centre[1] - y) * dy
  const off = (centre[1] - y) * dx - (centre[0] - x) * dy
  const half = Math.sqrt(Math.max(0, reach ** 2 - off ** 2))
  const [from, to] = [ends ? Math.max(0, middle - half) : middle - half, middle + half]
  return half > 0 && to > from ? [[x + from * dx, y + from * dy], [x + to * dx, y + to * dy]] : undefined
}

/** Mean direction; lines without an end are turned to run one way first. */
function courseOf(lines: readonly SheetLine[]): SheetPoint {
  const [first] = lines
  let [x, y] = [0, 0]
  for (const { direction, ends } of lines) {
    const turn = !ends && direction[0] * first!.direction[0] + direction[1] * first!.direction[1] < 0 ? -1 : 1
    x += turn * direction[0]
    y += turn * direction[1]
  }
  const size = Math.hypot(x, y)
  return size === 0 ? first!.direction : [x / size, y / size]
}
