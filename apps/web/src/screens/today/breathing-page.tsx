import type { Breathing } from '@lodebook/answers'
import { Figure, rangeText } from '../../drawer/figure.tsx'
import { book } from '../../link/desk.ts'
import { ask } from '../../link/reckoner.ts'
import { linkTo } from '../../shell/route.ts'
import { crewText } from '../../words/crew-value.ts'
import { NotEnoughShown } from '../../words/not-enough.tsx'
import { MonthBars } from './month-bars.tsx'

/** How the workings get their air: the draught reckoned, the months, how long fumes take to clear. */
export function BreathingPage() {
  const { value } = ask('breathing')
  if (!value) return <p class="waiting" role="status">Working it out…</p>
  return 'notEnough' in value ? <NotEnoughShown answer={value} /> : <Shown breathing={value} />
}

function Shown({ breathing }: { readonly breathing: Breathing }) {
  const { flow, inside, people, volume, clearing, measured, fans, months, monthsWanted, legs, openings, cautions } = breathing, units = book.value?.units ?? 'metres and g/t'
  const opened = [flow, inside, people, ...measured, volume].flatMap(a => a && 'id' in a ? [a] : [])
  const air = (q: number) => crewText(Math.abs(q), 'm3/s', units)
  return (
    <>
      <h1 class="sentence">{breathing.sentence}</h1>
      <ul class="inputs">{opened.map(a => <li key={a.id}><span>{a.sentence}</span><span><Figure answer={a} /></span></li>)}</ul>
      {'notEnough' in flow && <NotEnoughShown answer={flow} />}
      {months.length > 0 && 'id' in inside && (
        <section class="section" aria-labelledby="months">
          <h2 id="months">Month by month, at most, each way through the portal</h2>
          <MonthBars months={months} inside={inside.value} units={units} />
          <table class="month-table">
            <thead><tr><th scope="col">Month</th><th scope="col" class="n">Outside</th><th scope="col" class="n">In the cold of the day</th><th scope="col" class="n">In the warmth</th><th scope="col">Along the back</th></tr></thead>
            <tbody>{months.map(m => <tr key={m.month}><td>{m.month}</td><td class="n">{crewText(m.low, 'C', units, 1, true)} to {crewText(m.high, 'C', units, 1)}</td><td class="n">{air(m.atLow)}</td><td class="n">{air(m.atHigh)}</td><td>{m.turns ? <b>stops and turns round</b> : m.topAtLow}</td></tr>)}</tbody>
          </table>
        </section>
      )}
      {monthsWanted && <NotEnoughShown answer={monthsWanted} />}
      {legs.length > 0 && (
        <section class="section" aria-labelledby="legs">
          <h2 id="legs">Through each leg, reckoned</h2>
          <ul class="plain-list">{legs.filter(l => Math.abs(l.flow) > 1e-4).map(l => <li key={l.from + l.to}>{l.flow > 0 ? `${l.from} → ${l.to}` : `${l.to} → ${l.from}`}: {air(l.flow)}</li>)}</ul>
        </section>
      )}
      {clearing.length > 0 && (
        <section class="section" aria-labelledby="clear">
          <h2 id="clear">How long until it has thinned out</h2>
          <ul class="inputs">{clearing.map(c => <li key={c.id}><span>{c.sentence}</span><span><Figure answer={c} /> <span class="soft small">{rangeText(c)}</span></span></li>)}</ul>
          <p class="cautions">After a shot at least 15 minutes, until the air has been renewed, and a reading that passes (8 CCR 8437(d), California); local rules may ask for more.</p>
        </section>
      )}
      <section class="section" aria-labelledby="fans">
        <h2 id="fans">Fan and duct</h2>
        {fans.length === 0 ? <p><a class="btn" href={linkTo('write', 'fan')}>Write down a fan and its duct</a></p> : <ul class="inputs">{fans.map(f => <li key={f.id}><span>{f.sentence}</span><span><Figure answer={f} /></span></li>)}</ul>}
        <p class="row row-start"><a class="btn" href={linkTo('write', 'opening')}>Write down an opening</a><a class="btn" href={linkTo('write', 'outside')}>Outside temperatures of a month</a></p>
        <p class="soft small">Openings taken: {openings.map(o => `${o.name} at ${o.station}, ${crewText(o.width, 'm', units)} by ${crewText(o.height, 'm', units)}, ${o.state}`).join('; ')}.</p>
      </section>
      <ul class="cautions">{cautions.map(c => <li key={c}>{c}</li>)}</ul>
    </>
  )
}
