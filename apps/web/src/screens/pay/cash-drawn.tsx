import type { CashOverWeeks } from '@lodebook/answers'
import { useRef } from 'preact/hooks'
import { Figure } from '../../drawer/figure.tsx'
import { gridStep, steps } from '../../drawing/scale-bar.ts'
import { useSize } from '../../drawing/use-size.ts'
import { moneyText as money } from '../../words/crew-value.ts'

const left = 74, right = 12, top = 10, tall = 190, foot = 42

/** Money in hand over the weeks: the 80 % band, its middle, and the line of nothing. */
export function CashDrawn({ cash, currency }: { readonly cash: CashOverWeeks, readonly currency: string }) {
  const box = useRef<HTMLDivElement>(null), { width } = useSize(box)
  const { weeks } = cash, last = Math.max(1, weeks.at(-1) ?? 1)
  const low = Math.min(0, ...cash.low), high = Math.max(1, ...cash.high)
  const x = (week: number) => left + week / last * Math.max(width - left - right, 1)
  const y = (amount: number) => top + (high - amount) / (high - low) * tall
  const line = (values: readonly number[]) => values.map((v, i) => `${i === 0 ? 'M' : 'L'}${x(weeks[i]!)} ${y(v)}`).join('')
  const band = `${line(cash.high)}${[...weeks].reverse().map(week => `L${x(week)} ${y(cash.low[week]!)}`).join('')}Z`
  const byMoney = gridStep(tall / (high - low), 38), byWeek = Math.max(1, gridStep(Math.max(width - left - right, 1) / last, 44))
  return (
    <div ref={box} class="cash">
      <p><Figure answer={cash.deepest}>{cash.deepest.sentence}</Figure></p>
      {width > 0 && (
        <svg viewBox={`0 0 ${width} ${top + tall + foot}`} height={top + tall + foot} role="img" aria-label={`Money in hand by week, middle case: ${cash.middle.map((v, i) => `week ${weeks[i]} ${money(v, currency)}`).join(', ')}`}>
          <path class="cash-band" d={band} />
          <path class="cash-middle" d={line(cash.middle)} />
          <path class="rail" d={`M${left} ${top}V${top + tall}`} />
          <path class="cash-nothing" d={`M${left} ${y(0)}H${width - right}`} />
          {steps(low, high, byMoney).map(v => <g key={v}><path class="rail" d={`M${left - 5} ${y(v)}h5`} /><text x={left - 9} y={y(v) + 4} text-anchor="end">{money(v, currency)}</text></g>)}
          {steps(0, last, byWeek).map(w => <g key={w}><path class="rail" d={`M${x(w)} ${top + tall}v5`} /><text x={x(w)} y={top + tall + 19} text-anchor="middle">{w}</text></g>)}
          <text x={width - right} y={top + tall + 37} text-anchor="end">weeks from the first day’s work</text>
        </svg>
      )}
      <p class="soft small">Money of the whole crew, wages not counted: the middle and the 80 % band of the cases.</p>
      <p><Figure answer={cash.presentValue}>{cash.presentValue.sentence}</Figure></p>
    </div>
  )
}
