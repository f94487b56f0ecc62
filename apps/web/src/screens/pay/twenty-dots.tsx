import { moneyText as money } from '../../words/crew-value.ts'
import { useRef } from 'preact/hooks'
import { stackDots } from '../../drawing/dots.ts'
import { useSize } from '../../drawing/use-size.ts'
import { gridStep, steps } from '../../drawing/scale-bar.ts'
import { payAxis } from './pay-axis.ts'

const side = 18, foot = 46, head = 34

/** Twenty equally likely outcomes as dots on an axis of pay a day, with the line of no pay and the line of the wage to beat. */
export function TwentyDots({ twenty, wage, currency }: { readonly twenty: readonly number[], readonly wage: number, readonly currency: string }) {
  const box = useRef<HTMLDivElement>(null), { width } = useSize(box)
  const beats = twenty.filter(v => v > wage).length, loses = twenty.filter(v => v < 0).length
  const says = `${beats} of ${twenty.length} beat ${money(wage, currency)} a day; ${loses === 0 ? 'none loses' : loses === 1 ? '1 loses' : `${loses} lose`} money.`
  const { low, high } = payAxis(twenty, wage)
  const room = Math.max(width - 2 * side, 1), r = Math.min(15, room / 36), columns = Math.max(4, Math.floor(room / (2 * r + 2)))
  const dots = stackDots(twenty.map(v => Math.min(v, high)), low, high, columns), tall = Math.max(...dots.map(d => d.row + 1)) * (2 * r + 2)
  const height = head + tall + foot, base = head + tall
  const x = (pay: number) => side + (pay - low) / (high - low) * room, step = gridStep(room / (high - low), 90)
  const beyond = twenty.filter(v => v > high)
  return (
    <div ref={box} class="twenty">
      <p class="dots-says">{says}</p>
      {width > 0 && (
        <svg class="dots" viewBox={`0 0 ${width} ${height}`} height={height} role="img" aria-label={`Twenty outcomes of pay a person-day: ${twenty.map(v => money(v, currency)).join(', ')}. ${says}`}>
          <path class="axis" d={`M${side} ${base}H${width - side}`} />
          {steps(low, high, step).map(v => <g key={v}><path class="axis" d={`M${x(v)} ${base}v5`} /><text x={x(v)} y={base + 19} text-anchor="middle">{money(v, currency)}</text></g>)}
          <text x={width - side} y={base + 38} text-anchor="end">pay a person-day, {currency}</text>
          {low < 0 && <path class="axis" d={`M${x(0)} ${head - 6}V${base}`} />}
          <path class="line" d={`M${x(wage)} ${head - 14}V${base + 6}`} />
          <text class="marked" x={x(wage)} y={head - 19} text-anchor={x(wage) > width / 2 ? 'end' : 'start'}>{money(wage, currency)}, the wage to beat</text>
          {dots.map((d, i) => <circle key={i} class={d.value > wage ? undefined : 'under'} cx={side + (d.column + 0.5) * room / columns} cy={base - (d.row + 0.5) * (2 * r + 2)} r={r - 1} />)}
        </svg>
      )}
      <p class="soft small">Filled: beats the wage. Open: does not.{beyond.length > 0 && ` The dot at the right end lies further out, at ${money(Math.max(...beyond), currency)}.`}</p>
    </div>
  )
}
