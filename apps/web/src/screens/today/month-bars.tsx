import type { MonthShown } from '@lodebook/answers'
import type { BookState } from '../../bookkeeper/desk.ts'
import { useRef } from 'preact/hooks'
import { useSize } from '../../drawing/use-size.ts'
import { crewText, crewValue } from '../../words/crew-value.ts'

const left = 52, right = 10, top = 18, foot = 26, height = 190

/** Each month as a bar from the cold to the warmth of its days, the inside's warmth as a line across: where a bar meets the line the air stands still. */
export function MonthBars({ months, inside, units }: { readonly months: readonly MonthShown[], readonly inside: number, readonly units: BookState['units'] }) {
  const box = useRef<HTMLDivElement>(null), { width } = useSize(box)
  const low = Math.min(inside, ...months.map(m => m.low)) - 2, high = Math.max(inside, ...months.map(m => m.high)) + 2
  const step = (width - left - right) / months.length, y = (c: number) => top + (high - c) / (high - low) * (height - top - foot)
  const x = (i: number) => left + (i + 0.5) * step
  const ticks = [low + 2, inside, high - 2].map(c => ({ c, text: String(Math.round(crewValue(c, 'C', units).value)) }))
  return (
    <div class="month-bars" ref={box}>
      {width > 0 && (
        <svg viewBox={`0 0 ${width} ${height}`} height={height} role="img" aria-label={`Outside temperature by month beside ${crewText(inside, 'C', units, 1)} inside. Air turns round in ${months.filter(m => m.turns).map(m => m.month).join(', ') || 'no month'}.`}>
          <path class="axis" d={`M${left} ${top}V${height - foot}`} />
          {ticks.map(t => <text key={t.c} x={left - 7} y={y(t.c) + 4} text-anchor="end" class={t.c === inside ? 'marked' : undefined}>{t.text}</text>)}
          <text x={left} y={11}>outside, {units === 'metres and g/t' ? '°C' : '°F'}</text>
          {months.map((m, i) => (
            <g key={m.month}>
              <rect class={m.turns ? 'month turns' : 'month'} x={x(i) - Math.min(13, step / 3)} y={y(m.high)} width={2 * Math.min(13, step / 3)} height={Math.max(2, y(m.low) - y(m.high))} />
              <text x={x(i)} y={height - 8} text-anchor="middle">{m.month.slice(0, step < 30 ? 1 : 3)}</text>
            </g>
          ))}
          <path class="limit" d={`M${left} ${y(inside)}H${width - right}`} />
          <text class="marked" x={width - right} y={y(inside) - 5} text-anchor="end">inside</text>
        </svg>
      )}
      <p class="soft small">Dashed: the day passes the inside’s warmth, the exchange stops and turns round. Colder outside: air goes out along the back and in along the sill; warmer: the other way.</p>
    </div>
  )
}
