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

/** Grid, true and magnetic north about one foot; `up` is the azimuth that points up the sheet. */
export function NorthsDrawn({ up, trueNorth, magneticNorth }: { readonly up: number, readonly trueNorth: number, readonly magneticNorth: number }) {
  const at = (azimuth: number) => `rotate(${azimuth - up} 0 0)`
  const says = `Norths. True north lies ${decimal(Math.abs(trueNorth), 1)}° ${trueNorth < 0 ? 'left' : 'right'} of grid north, magnetic north ${decimal(Math.abs(magneticNorth), 1)}° ${magneticNorth < 0 ? 'left' : 'right'}; ${azimuthText(up)} is up the sheet.`
  return (
    <svg class="norths" viewBox="-52 -66 104 84" width="104" height="84" role="img" aria-label={says}>
      <g transform={at(0)}><path d="M0 10V-44M0-44l-4 10h8Z" class="north-grid" /><text y={-48} text-anchor="middle">grid</text></g>
      <g transform={at(trueNorth)}><path d="M0 6V-34" /><path d="m0-40 1.5 4.2h4.5l-3.600 2.700 1.400 4.300L0-31.500l-3.800 2.700 1.400-4.300-3.600-2.700h4.500Z" class="full" /></g>
      <g transform={at(magneticNorth)}><path d="M0 6V-38M0-38l5 9M0-38" /></g>
    </svg>
  )
}
