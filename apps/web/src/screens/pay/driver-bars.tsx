import { moneyText as money } from '../../words/crew-value.ts'
import type { Driver } from '@lodebook/answers'
import { useRef } from 'preact/hooks'
import { Figure } from '../../drawer/figure.tsx'
import { useSize } from '../../drawing/use-size.ts'

const side = 4, most = 3

/** The inputs that move the pay most, each as a bar from the pay at its low to the pay at its high, all on one scale. */
export function DriverBars({ drivers, middle, wage, currency }: {
  readonly drivers: readonly Driver[]
  readonly middle: number
  readonly wage: number
  readonly currency: string
}) {
  const box = useRef<HTMLOListElement>(null), { width } = useSize(box)
  const ends = drivers.slice(0, most).flatMap(d => [d.payAtLow, d.payAtHigh]), low = Math.min(0, ...ends), high = Math.max(wage, middle, ...ends)
  const x = (pay: number) => side + (pay - low) / Math.max(high - low, 1) * Math.max(width - 2 * side, 1)
  return (
    <>
      <ol class="drivers" ref={box}>
        {drivers.slice(0, most).map((d) => {
          const [from, to] = [Math.min(d.payAtLow, d.payAtHigh), Math.max(d.payAtLow, d.payAtHigh)]
          return (
            <li key={d.name}>
              <p class="driver-head"><b>{d.name}</b><span>from <Figure answer={d.answer}>{d.said.low}</Figure> to <Figure answer={d.answer}>{d.said.high}</Figure></span></p>
              {width > 0 && (
                <svg viewBox={`0 0 ${width} 44`} height="44" role="img" aria-label={`${d.name}: pay from ${money(from, currency)} to ${money(to, currency)} a day`}>
                  <path class="driver-rail" d={`M${x(low)} 12H${x(high)}`} />
                  <rect class="driver-bar" x={x(from)} y={6} width={Math.max(x(to) - x(from), 2)} height={12} />
                  <path class="driver-middle" d={`M${x(middle)} 2V22`} />
                  <path class="driver-wage" d={`M${x(wage)} 2V22`} />
                  <text x={Math.max(x(from), 2)} y={38}>{money(from, currency)}</text>
                  <text x={Math.min(x(to), width - 2)} y={38} text-anchor={x(to) - x(from) < 110 ? 'start' : 'end'} dx={x(to) - x(from) < 110 ? 62 : 0}>{money(to, currency)}</text>
                </svg>
              )}
            </li>
          )
        })}
      </ol>
      <p class="soft small">Each bar: pay a day with that one input at its low and at its high (one in ten beyond either), all else in the middle. The thin line is that middle case, the red line the wage to beat.</p>
      {drivers.length > most && (
        <details class="more"><summary>The others</summary>
          <ul class="plain-list">{drivers.slice(most).map(d => <li key={d.name}>{d.name}: <Figure answer={d.answer}>{d.said.low} to {d.said.high}</Figure>; pay {money(d.payAtLow, currency)} to {money(d.payAtHigh, currency)}</li>)}</ul>
        </details>
      )}
    </>
  )
}
