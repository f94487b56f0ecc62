import type { Pay } from '@lodebook/answers'
import { useRef } from 'preact/hooks'
import { Figure } from '../../drawer/figure.tsx'
import { gridStep, steps } from '../../drawing/scale-bar.ts'
import { useSize } from '../../drawing/use-size.ts'
import { moneyText as money } from '../../words/crew-value.ts'
import { figures } from '../../words/number.ts'
import { payAxis } from './pay-axis.ts'

const side = 14, tall = 34

/** The options beside each other on one scale of pay a day: their twenty outcomes as ticks, the middle as a stroke, walking away as the wage itself. */
export function Beside({ pay, shown, onPick }: { readonly pay: Pay, readonly shown: string, readonly onPick: (name: string) => void }) {
  const box = useRef<HTMLDivElement>(null), { width } = useSize(box)
  const { options, wage, currency, odds } = pay
  const { low, high } = payAxis(options.flatMap(o => o.twenty), wage)
  const x = (amount: number) => side + (Math.min(Math.max(amount, low), high) - low) / (high - low) * Math.max(width - 2 * side, 1)
  const step = gridStep(Math.max(width - 2 * side, 1) / (high - low), 76)
  return (
    <section class="section" aria-labelledby="beside">
      <h2 id="beside">The options beside each other</h2>
      <div ref={box} class="beside">
        {options.map((o, i) => (
          <div key={o.name} class={o.name === shown ? 'option shown' : 'option'}>
            <div class="option-head">
              <button type="button" class="option-name" aria-pressed={o.name === shown} onClick={() => onPick(o.name)}>{o.name}</button>
              <span>
                <Figure answer={o.perDay}>{money(o.perDay.value, currency)}</Figure> a day,
                {' '}<Figure answer={o.personDays}>{figures(o.personDays.value, 2)}</Figure> person-days,
                {' '}<Figure answer={o.ouncesWon}>{figures(o.ouncesWon.value, 2)}</Figure> oz
              </span>
            </div>
            {width > 0 && (
              <svg viewBox={`0 0 ${width} ${tall}`} height={tall} role="img" aria-label={`${o.name}: ${o.twenty.map(v => money(v, currency)).join(', ')} a day`}>
                <path class="rail" d={`M${side} ${tall / 2}H${width - side}`} />
                {low < 0 && <path class="rail" d={`M${x(0)} 3V${tall - 3}`} />}
                <path class="wage" d={`M${x(wage)} 0V${tall}`} />
                {o.twenty.map((v, k) => <circle key={k} class={v > wage ? undefined : 'under'} cx={x(v)} cy={tall / 2 + [0, -6, 6][k % 3]!} r={4.2} />)}
                <path class="middle" d={`M${x(o.perDay.value)} 2V${tall - 2}`} />
              </svg>
            )}
            <p class="soft small">{o.ground}. {i === 0 ? `Leaves more than walking away in ${hundred(odds[0]!.at(-1)!)}.` : `Leaves more than ${options[0]!.name} in ${hundred(odds[i]![0]!)}, than walking away in ${hundred(odds[i]!.at(-1)!)}.`}</p>
          </div>
        ))}
        <div class="option">
          <div class="option-head"><b class="option-name plain">walk away</b><span>{money(wage, currency)} a day elsewhere{pay.walkAway ? ': more, on average, than any of these' : ''}</span></div>
        </div>
        {width > 0 && (
          <svg viewBox={`0 0 ${width} 40`} height="40" aria-hidden="true">
            <path class="rail" d={`M${side} 1H${width - side}`} />
            {steps(low, high, step).map(v => <g key={v}><path class="rail" d={`M${x(v)} 1v5`} /><text x={x(v)} y={19} text-anchor="middle">{money(v, currency)}</text></g>)}
            <text x={width - side} y={36} text-anchor="end">pay a person-day, {currency}</text>
          </svg>
        )}
      </div>
      <p class="soft small">Each dot one of twenty equally likely outcomes, filled when it beats the wage (the red line); the stroke is the middle. Dots at the right end may lie further out. All options meet the same ground, price and rates in the same draw.</p>
    </section>
  )
}

const hundred = (share: number) => `${Math.round(100 * share)} of 100 cases`
