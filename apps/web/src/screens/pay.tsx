import type { Pay } from '@lodebook/answers'
import { ask } from '../link/reckoner.ts'
import { Figure, rangeText } from '../drawer/figure.tsx'
import { Figures } from '../drawer/figures.tsx'
import { Answered } from '../shell/answered.tsx'
import { outOf } from '../words/number.ts'
import { DriverBars } from './pay/driver-bars.tsx'
import { TwentyDots } from './pay/twenty-dots.tsx'

/** Pay: is it worth our days? The sentence, twenty ways it could turn out, and what it hangs on. */
export function PayScreen() {
  return <Answered asks="Is it worth our days?" asked={ask('pay')}>{pay => <Shown pay={pay} />}</Answered>
}

function Shown({ pay }: { readonly pay: Pay }) {
  return (
    <>
      <h1 class="sentence">{pay.sentence}</h1>
      <p class="big"><span class="value"><Figure answer={pay.perDay} /></span><span class="range">{rangeText(pay.perDay)}</span></p>
      <section class="section" aria-labelledby="twenty">
        <h2 id="twenty">Twenty ways it could turn out, each as likely as the next</h2>
        <TwentyDots twenty={pay.twenty} wage={pay.wage} currency={pay.currency} />
      </section>
      <Figures of={[{ name: 'work', answer: pay.personDays }, { name: 'gold won', answer: pay.ouncesWon }, { name: 'breaks even at, as worked', answer: pay.breakEven }, { name: 'beats the wage', answer: pay.chance, text: outOf(pay.chance.value, 20) }]} />
      <section class="section" aria-labelledby="matters">
        <h2 id="matters">What it hangs on most</h2>
        <DriverBars drivers={pay.drivers} middle={pay.middleCase} wage={pay.wage} currency={pay.currency} />
      </section>
      {pay.cautions.length > 0 && <ul class="cautions">{pay.cautions.map(c => <li key={c}>{c}</li>)}</ul>}
      <section class="section" aria-labelledby="inputs">
        <h2 id="inputs">What went in</h2>
        <ul class="inputs">
          {pay.inputs.map(input => <li key={input.id}><span>{input.sentence}</span><span><Figure answer={input} /> <span class="soft small">{rangeText(input)}</span></span></li>)}
        </ul>
      </section>
    </>
  )
}
