import type { AirPlace } from '@lodebook/answers'
import { useRef } from 'preact/hooks'
import { openEntry } from '../../drawer/drawer-state.ts'
import { useSize } from '../../drawing/use-size.ts'
import { dayText } from '../../words/moment.ts'
import { figures } from '../../words/number.ts'

const left = 46, right = 12, top = 14, foot = 30, height = 148

/** One substance at one place through time, with the nearest limit as a line. Each reading opens. */
export function Trend({ place, substance, unit, limit }: {
  readonly place: AirPlace
  readonly substance: string
  readonly unit: string
  readonly limit: { readonly value: number, readonly text: string } | undefined
}) {
  const box = useRef<HTMLDivElement>(null), { width } = useSize(box)
  const points = place.readings.flatMap((r) => {
    const value = (r.values as Readonly<Record<string, number>>)[substance], { entry, taken } = r
    return value === undefined ? [] : [{ at: Date.parse(taken), value, entry, taken, out: r.findings.some(f => f.substance === substance) }]
  })
  if (points.length === 0) return null
  const times = points.map(p => p.at), values = [...points.map(p => p.value), ...limit ? [limit.value] : []]
  const [t0, t1, lowest, highest] = [Math.min(...times), Math.max(...times), Math.min(...values), Math.max(...values)]
  const pad = Math.max((highest - lowest) * 0.12, Math.abs(highest) * 0.004, 0.1)
  const [low, high] = [lowest === 0 ? 0 : lowest - pad, highest + pad]
  const x = (t: number) => left + (t1 > t0 ? (t - t0) / (t1 - t0) : 0.5) * (width - left - right)
  const y = (v: number) => top + (high - v) / (high - low) * (height - top - foot)
  const says = `${substance} at ${place.name}: ${points.map(p => `${dayText(p.taken)} ${figures(p.value, 3)} ${unit}`).join(', ')}`
  return (
    <div class="trend" ref={box}>
      <p class="small"><b>{substance.replace(/^./, c => c.toUpperCase())}</b>, {unit}; last {figures(points.at(-1)!.value, 3)}</p>
      {width > 0 && (
        <svg viewBox={`0 0 ${width} ${height}`} height={height} role="group" aria-label={says}>
          <path class="axis" d={`M${left} ${top}V${height - foot}H${width - right}`} />
          {[lowest, highest].filter((v, i, a) => a.indexOf(v) === i && v !== limit?.value).map(v => <text key={v} x={left - 6} y={y(v) + 4} text-anchor="end">{figures(v, 3)}</text>)}
          <text x={left} y={height - 8}>{dayText(points[0]!.taken)}</text>
          {t1 > t0 && <text x={width - right} y={height - 8} text-anchor="end">{dayText(points.at(-1)!.taken)}</text>}
          {limit && <><path class="limit" d={`M${left} ${y(limit.value)}H${width - right}`} /><text x={left - 6} y={y(limit.value) + 4} text-anchor="end" class="marked">{figures(limit.value, 3)}</text><text x={width - right} y={y(limit.value) + (y(limit.value) < top + 14 ? 13 : -5)} text-anchor="end" class="marked">{limit.text}</text></>}
          <path class="run" d={points.map((p, i) => `${i === 0 ? 'M' : 'L'}${x(p.at)} ${y(p.value)}`).join('')} />
          {points.map(p => (
            <g key={p.entry} role="button" tabIndex={0} aria-label={`${dayText(p.taken)}: ${figures(p.value, 3)} ${unit}${p.out ? ', outside a limit' : ''}`} class="trend-point" onClick={() => openEntry(p.entry)} onKeyDown={(e) => { if (e.key === 'Enter' || e.key === ' ') { e.preventDefault(); openEntry(p.entry) } }}>
              <circle class="hit" cx={x(p.at)} cy={y(p.value)} r={16} />
              {p.out ? <path class="out" d={`M${x(p.at) - 5} ${y(p.value) - 5}l10 10m0 -10l-10 10`} /> : <circle class="dot" cx={x(p.at)} cy={y(p.value)} r={3.6} />}
            </g>
          ))}
        </svg>
      )}
    </div>
  )
}
