import type { ComponentChildren } from 'preact'
import { scaleBar } from './scale-bar.ts'
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
export const PaperScale = ({ scale }: { readonly scale: number }) => <p>One to {decimal(scale, 0)}, printed at full size on A4 laid across <button type="button" class="btn print-now" onClick={() => print()}>Print</button></p>

/** Grid, true and magnetic north about one foot, each with its own head and letter; `up` is the azimuth that points up the sheet. */
export function NorthsDrawn({ up, trueNorth, magneticNorth }: { readonly up: number, readonly trueNorth: number, readonly magneticNorth: number }) {
  const says = `Norths. True north lies ${decimal(Math.abs(trueNorth), 1)}° ${trueNorth < 0 ? 'left' : 'right'} of grid north, magnetic north ${decimal(Math.abs(magneticNorth), 1)}° ${magneticNorth < 0 ? 'left' : 'right'}; ${azimuthText(up)} is up the sheet.`
  return (
    <svg class="norths" viewBox="-74 -74 148 148" width="118" height="118" role="img" aria-label={says}>
      <North azimuth={-up} length={36} letter="G"><path d="M-4 9 0 0 4 9Z" class="full" /></North>
      <North azimuth={trueNorth - up} length={56} letter="T"><path d="M0-5 1.5-1.600 5-1.500 2.200.700 3.100 4.200 0 2.200-3.100 4.200-2.200.700-5-1.500-1.500-1.600Z" class="full" transform="translate(0 2)" /></North>
      <North azimuth={magneticNorth - up} length={56} letter="M"><path d="M0 0 5 10" /></North>
      <circle r="2" class="full" />
    </svg>
  )
}

/** One north: a line, its head at the tip, and its letter upright beyond it. */
function North({ azimuth, length, letter, children }: {
  readonly azimuth: number
  readonly length: number
  readonly letter: string
  readonly children: ComponentChildren
}) {
  const a = azimuth * Math.PI / 180, far = length + 11
  return (
    <g>
      <g transform={`rotate(${azimuth})`}><path d={`M0 0V${-length}`} /><g transform={`translate(0 ${-length})`}>{children}</g></g>
      <text x={Math.sin(a) * far} y={-Math.cos(a) * far + 4} text-anchor="middle">{letter}</text>
    </g>
  )
}
