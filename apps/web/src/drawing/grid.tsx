import type { Size } from './use-size.ts'
import { gridStep, steps } from './scale-bar.ts'
import { toDrawing, toScreen } from './view.ts'
import type { Point, View } from './view.ts'
import { book } from '../link/desk.ts'
import { crewUnit, crewValue } from '../words/crew-value.ts'
import { decimal } from '../words/number.ts'

/** Ticks with numbers along the left and lower edges of a section. */
export function SectionTicks({ view, size, along, up, downward = false }: {
  readonly view: View
  readonly size: Size
  /** What the two ways are; the crew's unit of length is put after each. */
  readonly along: string
  readonly up: string
  /** Figures grow downward, as on a vein seen down its dip. */
  readonly downward?: boolean
}) {
  const units = book.value?.units ?? 'metres and g/t', unit = crewUnit('m', units), per = crewValue(1, 'm', units).value
  const step = gridStep(view.k / per, 70), low = toDrawing(view, { x: 0, y: size.height }), high = toDrawing(view, { x: size.width, y: 0 })
  const places = step < 1 ? 1 : 0
  return (
    <g class="ticks" aria-hidden="true">
      {steps(low.x * per, high.x * per, step).map((x) => {
        const sx = toScreen(view, { x: x / per, y: 0 }).x
        return sx > 50 && sx < size.width - 120 && <g key={`x${x}`}><path d={`M${sx} ${size.height}v-6`} /><text x={sx} y={size.height - 9} text-anchor="middle">{decimal(x, places)}</text></g>
      })}
      {steps(low.y * per, high.y * per, step).map((y) => {
        const sy = toScreen(view, { x: 0, y: y / per }).y
        return sy > 22 && sy < size.height - 24 && <g key={`y${y}`}><path d={`M0 ${sy}h6`} /><text x={9} y={sy + 4}>{decimal(downward ? -y : y, places)}</text></g>
      })}
      <text x={size.width - 8} y={size.height - 9} text-anchor="end">{along}, {unit}</text>
      <text x={9} y={16}>{up}, {unit}</text>
    </g>
  )
}

/** Small crosses where the lines of the grid meet, with their figures, on a plan turned by some azimuth. */
export function GridCrosses({ view, size, marks, toGrid, toPlan }: {
  readonly view: View
  readonly size: Size
  /** Where marks stand, in the drawing's coordinates: no figures are written among them. */
  readonly marks: readonly Point[]
  /** From the drawing's coordinates to [east, north]. */
  readonly toGrid: (x: number, y: number) => readonly [number, number]
  readonly toPlan: (east: number, north: number) => { readonly x: number, readonly y: number }
}) {
  const per = crewValue(1, 'm', book.value?.units ?? 'metres and g/t').value
  const step = gridStep(view.k / per, 90)
  const corners = [[0, 0], [size.width, 0], [0, size.height], [size.width, size.height]].map(([x, y]) => {
    const p = toDrawing(view, { x: x!, y: y! })
    const [e, n] = toGrid(p.x, p.y)
    return [e * per, n * per] as const
  })
  const es = steps(Math.min(...corners.map(c => c[0])), Math.max(...corners.map(c => c[0])), step)
  const ns = steps(Math.min(...corners.map(c => c[1])), Math.max(...corners.map(c => c[1])), step)
  const crosses = es.flatMap(e => ns.map(n => ({ e, n, p: toScreen(view, toPlan(e / per, n / per)) })))
    .filter(({ p }) => p.x > 0 && p.y > 0 && p.x < size.width && p.y < size.height)
  const taken = marks.map(m => toScreen(view, m))
  const isClear = (p: Point) => !taken.some(m => m.x > p.x - 40 && m.x < p.x + 110 && Math.abs(m.y - p.y) < 26)
  return (
    <g class="ticks" aria-hidden="true">
      {crosses.map(({ e, n, p }) => (
        <g key={`${e},${n}`} transform={`translate(${p.x} ${p.y})`}>
          <path d="M-5 0H5M0-5V5" />
          {Math.round(e / step) % 2 === 0 && Math.round(n / step) % 2 === 0 && p.x < size.width - 90 && p.y > 16 && isClear(p) && <text x={7} y={-4} class="faint">{decimal(e, 0)} E {decimal(n, 0)} N</text>}
        </g>
      ))}
    </g>
  )
}
