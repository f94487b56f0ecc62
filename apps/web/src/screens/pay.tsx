import type { Pay, PayOption } from '@lodebook/answers'
import { useState } from 'preact/hooks'
import { Figure, rangeText } from '../drawer/figure.tsx'
import { Figures } from '../drawer/figures.tsx'
import { ask } from '../link/reckoner.ts'
import { Answered } from '../shell/answered.tsx'
import { linkTo } from '../shell/route.ts'
import { moneyText } from '../words/crew-value.ts'
import { Beside } from './pay/beside.tsx'
import { CashDrawn } from './pay/cash-drawn.tsx'
import { DriverBars } from './pay/driver-bars.tsx'
import { TwentyDots } from './pay/twenty-dots.tsx'

/** Pay: is it worth our days? The sentence, twenty ways it could turn out, what it hangs on, and the options beside each other. */
export function PayScreen() {
  return <Answered asks="Is it worth our days?" asked={ask('pay')}>{pay => <Shown pay={pay} />}</Answered>
}

function Shown({ pay }: { readonly pay: Pay }) {
  const [picked, pick] = useState<string>()
  const option = pay.options.find(o => o.name === picked) ?? pay.options[0]!
  const first = option === pay.options[0]
  return (
    <>
      <h1 class="sentence">{first ? pay.sentence : option.sentence}</h1>
      <p class="big"><span class="value"><Figure answer={option.perDay}>{`${moneyText(option.perDay.value, pay.currency)} a day`}</Figure></span><span class="range">{rangeText(option.perDay)}</span></p>
      <div class="pay-head">
        <section class="section" aria-labelledby="twenty">
          <h2 id="twenty">Twenty ways {option.name} could turn out, each as likely as the next</h2>
          <TwentyDots twenty={option.twenty} wage={pay.wage} currency={pay.currency} />
          <p class="break-even"><Figure answer={option.breakEven}>{option.breakEven.sentence}</Figure></p>
        </section>
        <section class="section" aria-labelledby="matters">
          <h2 id="matters">What it hangs on most</h2>
          <DriverBars drivers={option.drivers} middle={option.middleCase} wage={pay.wage} currency={pay.currency} />
        </section>
      </div>
      <Beside pay={pay} shown={option.name} onPick={pick} />
      <Figures of={figuresOf(option)} />
      <div class="pay-head">
        <section class="section" aria-labelledby="must">
          <h2 id="must">What must be true for it to leave {moneyText(pay.wage, pay.currency)} a day</h2>
          {option.mustBeTrue.length === 0 ? <p class="prose">No one thing alone would make it pay that much.</p>
            : <><ul class="plain-list prose">{option.mustBeTrue.map(line => <li key={line}>{line}.</li>)}</ul><p class="soft small">One thing at a time, all else in the middle.</p></>}
        </section>
        <section class="section" aria-labelledby="cash">
          <h2 id="cash">Money in hand, week by week</h2>
          <CashDrawn cash={option.cash} currency={pay.currency} />
        </section>
      </div>
      {pay.cautions.length > 0 && <ul class="cautions">{pay.cautions.map(c => <li key={c}>{c}</li>)}</ul>}
      <p class="row row-start"><a class="btn" href={linkTo('write', 'option')}>Write an option of work</a><a class="btn" href={linkTo('write', 'cost')}>Write a cost</a><a class="btn" href={linkTo('write', 'price')}>Write a price</a></p>
      <section class="section" aria-labelledby="inputs">
        <h2 id="inputs">What went in</h2>
        <ul class="inputs">
          {pay.inputs.map(input => <li key={input.id}><span>{input.sentence}</span><span><Figure answer={input} /> <span class="soft small">{rangeText(input)}</span></span></li>)}
        </ul>
      </section>
    </>
  )
}

const figuresOf = (o: PayOption) => [
  { name: 'work', answer: o.personDays }, { name: 'weeks', answer: o.weeks }, { name: 'gold won', answer: o.ouncesWon },
  { name: 'beats the wage', answer: o.chance, text: `${Math.round(100 * o.chance.value)} in 100` }, { name: 'above the wage, in all', answer: o.surplus },
  ...o.breakEvenWidth ? [{ name: 'vein must be so wide', answer: o.breakEvenWidth }] : [],
]
