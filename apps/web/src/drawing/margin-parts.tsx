import type { ComponentChildren } from 'preact'
import { scaleBar } from './scale-bar.ts'
import { boundsOf } from './view.ts'
import { azimuthText, decimal } from '../words/number.ts'

/** A bar divided in equal parts, black and white by turns, with its figures. */
export function ScaleBarDrawn({ k, room, unit }: { readonly k: number, readonly room: number, readonly unit?: 'm' | 'ft' }) {
  const bar = scaleBar(k, room, unit), part = bar.pixels / bar.parts
  const says = `${decimal(bar.length, bar.length < 1 ? 2 : 0)} ${bar.unit}`
  return (
    <svg class="scale-bar" width={bar.pixels + 44} height={32} role="img" aria-label={`Scale bar: ${says}`}>
      <g transform="translate(2 18)">
        <rect width={bar.pixels} height={7} class="bar-frame" />
        {Array.from({ length: bar.parts }, (_, i) => i % 2 === 0 && <rect key={i} x={i * part} width={part} height={7} class="bar-full" />)}
        <text x={0} y={-5}>0</text>
        <text x={bar.pixels} y={-5} text-anchor="middle">{says}</text>
      </g>
    </svg>
  )
}

/** The scale of a sheet laid out for paper. */
export const PaperScale = ({ scale }: { readonly scale: number }) => (
  <p>One to {decimal(scale, 0)}, printed at full size on A4 laid across <button type="button" class="btn print-now" onClick={() => print()}>Print</button></p>
)

const star = 'M0-5 1.5-1.600 5-1.500 2.200.700 3.100 4.200 0 2.200-3.100 4.200-2.200.700-5-1.500-1.500-1.600Z'

/**
 * Grid, true and magnetic north about one foot, each with its own head and letter; grid and true north as one where they all but coincide.
 * @param up  the azimuth that points up the sheet
 */
export function NorthsDrawn({ up, trueNorth, magneticNorth }: { readonly up: number, readonly trueNorth: number, readonly magneticNorth: number }) {
  const says = `Norths. True north lies ${side(trueNorth)} of grid north, magnetic north ${side(magneticNorth)}; ${azimuthText(up)} is up the sheet.`
  const together = Math.abs(trueNorth) < 2, far = 70
  const turns = [together ? trueNorth : 0, trueNorth, magneticNorth].map(azimuth => (azimuth - up) * Math.PI / 180)
  const tips = turns.map(a => ({ x: Math.sin(a) * far, y: -Math.cos(a) * far }))
  const box = boundsOf([{ x: 0, y: 0 }, ...tips])!, spare = 16
  const wide = box.maxX - box.minX + 2 * spare, high = box.maxY - box.minY + 2 * spare
  return (
    <svg class="norths" viewBox={`${box.minX - spare} ${box.minY - spare} ${wide} ${high}`} width={wide} height={high} role="img" aria-label={says}>
      {!together && <North azimuth={-up} length={38} letter="G"><path d="M-4 9 0 0 4 9Z" class="full" /></North>}
      <North azimuth={trueNorth - up} length={58} letter={together ? 'G, T' : 'T'}><path d={star} class="full" transform="translate(0 2)" /></North>
      <North azimuth={magneticNorth - up} length={58} letter="M"><path d="M0 0 5 10" /></North>
      <circle r="2" class="full" />
    </svg>
  )
}

/** '2.4° right', clockwise being right. */
const side = (degrees: number): string => `${decimal(Math.abs(degrees), 1)}° ${degrees < 0 ? 'left' : 'right'}`

/** One north: a line, its head at the tip, and its letter upright beyond it. */
function North({ azimuth, length, letter, children }: {
  readonly azimuth: number
  readonly length: number
  readonly letter: string
  readonly children: ComponentChildren
}) {
  const a = azimuth * Math.PI / 180, far = length + 12
  return (
    <g>
      <g transform={`rotate(${azimuth})`}>
        <path d={`M0 0V${-length}`} />
        <g transform={`translate(0 ${-length})`}>{children}</g>
      </g>
      <text x={Math.sin(a) * far} y={-Math.cos(a) * far + 4} text-anchor="middle">{letter}</text>
    </g>
  )
}
