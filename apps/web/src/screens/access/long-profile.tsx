import type { Way } from '@lodebook/answers'
import { useRef, useState } from 'preact/hooks'
import { useSize } from '../../drawing/use-size.ts'
import { book } from '../../link/desk.ts'
import { crewText, crewUnit, crewValue } from '../../words/crew-value.ts'
import { toStep } from '../../words/number.ts'

interface Props {
  readonly name: string
  readonly stations: Way['stations']
  readonly names?: readonly string[]
  readonly pinches?: Way['pinches']
  readonly ponds?: Way['ponds']
  /** The way as it is, drawn under the one that is wanted. */
  readonly before?: Way['stations']
  /** Only so far in, metres. */
  readonly until?: number
}

const high = 210, left = 46, right = 12, top = 24, bottom = 46

/** Sill and back along a way, from its first station inward; heights are drawn larger than lengths, and the sheet says by how much. */
export function LongProfile({ name, stations, names, pinches = [], ponds = [], before, until }: Props) {
  const svg = useRef<SVGSVGElement>(null), { width } = useSize(svg), [here, setHere] = useState<number>(), units = book.value!.units
  const start = stations[0]!.at, end = Math.min(stations.at(-1)!.at, start + (until ?? Infinity))
  const both = [...stations, ...(before ?? [])].filter(s => s.at <= end)
  const low = Math.min(...both.map(s => s.sill)), roof = Math.max(...both.map(s => s.back)), span = Math.max(roof - low, 0.5)
  const kx = Math.max(1, width - left - right) / Math.max(end - start, 0.1), kz = (high - top - bottom) / span
  const x = (at: number) => left + (Math.min(at, end) - start) * kx, y = (z: number) => high - bottom - (z - low) * kz
  const line = (way: Way['stations'], of: 'sill' | 'back') => way.map(s => `${x(s.at)} ${y(valueWithin(way, s, of, end))}`).join('L')
  const room = (way: Way['stations']) => `M${line(way, 'sill')}L${[...way].reverse().map(s => `${x(s.at)} ${y(valueWithin(way, s, 'back', end))}`).join('L')}Z`
  const shown = stations.filter(s => s.at <= end), step = (by: number) => setHere(Math.max(0, Math.min(shown.length - 1, (here ?? -1) + by)))
  const point = (e: { readonly clientX: number, readonly currentTarget: Element }) => {
    const px = e.clientX - e.currentTarget.getBoundingClientRect().left
    setHere(shown.reduce((best, s, i) => Math.abs(x(s.at) - px) < Math.abs(x(shown[best]!.at) - px) ? i : best, 0))
  }
  const times = kz / kx, at = here === undefined ? undefined : shown[here]
  const says = at === undefined ? undefined : `${names?.[here!] ?? ''} ${crewText(at.at - start, 'm', units)} in: ${crewText(at.back - at.sill, 'm', units)} of head room, ${crewText(at.width, 'm', units)} wide${pinches.filter(p => p.at === at.at).map(p => `; ${p.says}`).join('')}`
  const crewLow = crewValue(low, 'm', units).value, crewStep = crewValue(span, 'm', units).value > 4 ? 2 : crewValue(span, 'm', units).value > 1.6 ? 1 : 0.5
  const perUnit = crewValue(1, 'm', units).value, ticks = Array.from({ length: 12 }, (_, i) => i * crewStep).filter(t => t / perUnit <= span * 1.001)
  const run = crewValue(end - start, 'm', units).value, runStep = niceStep(run / Math.max(2, Math.floor(width / 110)))
  return (
    <figure class="profile">
      <svg
        ref={svg}
        height={high}
        class="profile-drawn"
        role="img"
        tabIndex={0}
        aria-label={`${name}. Left and right arrows step from station to station. ${says ?? ''}`}
        onKeyDown={(e) => { if (e.key === 'ArrowRight' || e.key === 'ArrowLeft') { step(e.key === 'ArrowRight' ? 1 : -1); e.preventDefault() } }}
        onPointerMove={point}
        onPointerDown={point}
      >
        {width > 0 && (
          <g>
            {ticks.map(t => <g key={t}><path class="tick" d={`M${left} ${y(low + t / perUnit)}H${width - right}`} /><text x={left - 6} y={y(low + t / perUnit) + 4} text-anchor="end">{toStep(t, crewStep)}</text></g>)}
            {before && <path class="room-before" d={room(before)} />}
            <path class="room" d={room(stations)} />
            {before && <path class="was" d={`M${line(before, 'back')}M${line(before, 'sill')}`} />}
            {ponds.filter(p => p.depth > 0.08 && p.from < end).map(p => <path key={p.from} class="pond" d={`M${x(p.from)} ${y(low) + 5}H${x(p.to)}`} />)}
            <path class="rock-line" d={`M${line(stations, 'back')}M${line(stations, 'sill')}`} />
            {Array.from({ length: Math.floor(run / runStep) + 1 }, (_, i) => i * runStep).map(d => <text key={d} x={x(start + d / perUnit)} y={high - 27} text-anchor="middle">{toStep(d, runStep)}</text>)}
            {pinches.filter(p => p.at <= end).map((p, i) => <path key={i} class="pinch" d={`M${x(p.at)} ${top - 12}l5 8h-10Z`} />)}
            {at && <path class="here" d={`M${x(at.at)} ${y(at.sill)}V${y(at.back)}`} />}
            <text x={left} y={high - 8} class="axis">{crewUnit('m', units)} in from {names?.[0] ?? 'the portal'}; heights in {crewUnit('m', units)}, drawn {toStep(times, times < 3 ? 0.5 : 1)} times as large</text>
            <title>{`${name}, lowest sill at ${toStep(crewLow, 0.1)}`}</title>
          </g>
        )}
      </svg>
      <figcaption class="finger-says">{says ?? <span class="soft">Point along it to read head room and width.{pinches.length > 0 ? ' ▽ marks a low, narrow, steep or wet place.' : ''}</span>}</figcaption>
    </figure>
  )
}

/** The sill or back at a station, or where the drawing ends before it. */
function valueWithin(way: Way['stations'], s: Way['stations'][number], of: 'sill' | 'back', end: number): number {
  if (s.at <= end) return s[of]
  const i = way.findIndex(w => w.at > end), [a, b] = [way[i - 1]!, way[i]!]
  return a[of] + (b[of] - a[of]) * (end - a.at) / (b.at - a.at)
}

function niceStep(rough: number): number {
  const ten = 10 ** Math.floor(Math.log10(rough))
  return [1, 2, 5, 10].map(m => m * ten).find(s => s >= rough) ?? 10 * ten
}
