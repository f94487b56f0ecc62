import type { Next } from '@lodebook/answers'
import { Figure } from '../drawer/figure.tsx'
import { ask } from '../link/reckoner.ts'
import { Answered } from '../shell/answered.tsx'
import { linkTo } from '../shell/route.ts'
import { moneyText as money } from '../words/crew-value.ts'
import { figures } from '../words/number.ts'
import { FlagSheet } from './next/flag-sheet.tsx'
import { there } from '../words/there.ts'

/** Next: where does the next hour of chiselling, or the next assay fee, do most good? */
export function NextScreen() {
  const vein = there(ask('vein').value), grade = there(ask('grade').value)
  return (
    <Answered asks="Where does the next hour of chiselling, or the next assay fee, do most good?" asked={ask('next')}>
      {next => (
        <>
          <Shown next={next} />
          {vein && grade && <FlagSheet next={next} vein={vein} grade={grade} />}
          <Lists next={next} />
        </>
      )}
    </Answered>
  )
}

const Shown = ({ next }: { readonly next: Next }) => (
  <>
    <h1 class="sentence">{next.sentence}</h1>
    <p class="soft">The choice, the best now first: {next.choice.join('; ')}. Certainty: <Figure answer={next.certainty}>{money(next.certainty.value, next.currency)}</Figure>.</p>
  </>
)

const shown = 12

function Lists({ next }: { readonly next: Next }) {
  const { looks, batch, blind, currency } = next
  return (
    <>
      <section class="section" aria-labelledby="looks">
        <h2 id="looks">Looks, by what each is worth above its cost</h2>
        {looks.length === 0 ? <p class="prose">No look would change the choice.</p> : (
          <div class="scroll-x" tabIndex={0} role="group" aria-labelledby="looks">
            <table>
              <thead><tr><th scope="col">Flag</th><th scope="col">What and where</th><th scope="col" class="n">Worth, {currency}</th><th scope="col" class="n">Cost, {currency}</th><th scope="col" class="n">Hours</th><th scope="col" class="n">Worth an hour</th></tr></thead>
              <tbody>
                {looks.slice(0, shown).map(l => (
                  <tr key={l.rank}>
                    <td>{l.rank}</td><td>{l.does}: {l.where}</td><td class="n"><Figure answer={l.worth}>{money(l.worth.value, currency)}</Figure></td>
                    <td class="n">{money(l.cost, currency)}</td><td class="n">{figures(l.hours, 2)}</td><td class="n">{money(l.perHour, currency)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        )}
      </section>
      {batch.length > 0 && (
        <section class="section" aria-labelledby="batch">
          <h2 id="batch">Taken together, before anything is decided</h2>
          <ol class="plain-list prose">{batch.map(({ look, adds }) => <li key={look.rank}>Flag {look.rank}, {look.does}, {look.where}: adds {money(adds, currency)} given those before it, costs {money(look.cost, currency)}.</li>)}</ol>
        </section>
      )}
      {blind.length > 0 && (
        <section class="section" aria-labelledby="blind">
          <h2 id="blind">Where the estimate is blind</h2>
          <ul class="plain-list prose">{blind.map(b => <li key={b.panel}>{b.sentence}</li>)}</ul>
        </section>
      )}
      <ul class="cautions">{next.cautions.map(c => <li key={c}>{c}</li>)}</ul>
      <p class="row row-start"><a class="btn" href={linkTo('write', 'sample')}>Write a sample</a><a class="btn" href={linkTo('write', 'option')}>Write an option of work</a></p>
    </>
  )
}
