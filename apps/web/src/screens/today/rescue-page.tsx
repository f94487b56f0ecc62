import type { Today } from '@lodebook/answers'
import { ask } from '../../link/reckoner.ts'
import { now } from '../../link/now.ts'
import { callOuts } from '../../watch/watch.ts'
import { lateText } from '../../watch/late-text.ts'
import { clockText, momentText } from '../../words/moment.ts'
import { farText } from './far-text.ts'
import { RescuePlan } from './rescue-plan.tsx'

/** One page to read down the telephone or hand over: where, who, since when, what waits there, and the plan. */
export function RescuePage({ today, path }: { readonly today: Today, readonly path: readonly string[] }) {
  const calls = callOuts.value, chosen = calls.filter(c => c.entry === path[0]), shown = chosen.length > 0 ? chosen : calls, { rescue, air } = today, drawn = ask('workings').value
  return (
    <article class="rescue">
      <header class="rescue-head">
        <h1>{shown.some(c => c.overdueBy >= 0) ? 'People overdue underground' : 'For rescuers'}</h1>
        <p>Printed or read {momentText(new Date(now.value).toISOString())}</p>
        <button type="button" class="btn print-now" onClick={() => print()}>Print this page</button>
      </header>
      <section aria-labelledby="r-where">
        <h2 id="r-where">Where: {rescue.mine}</h2>
        <table class="positions"><tbody>{rescue.position.map(p => <tr key={p.form}><th scope="row">{p.form}</th><td><b>{p.text}</b></td></tr>)}</tbody></table>
        <p class="small">{rescue.note}{rescue.district === undefined ? '' : `; ${rescue.district}`}</p>
      </section>
      <section aria-labelledby="r-who">
        <h2 id="r-who">Who and since when</h2>
        {shown.length === 0 ? <p>Nobody is written as in now.</p> : shown.map(c => (
          <p key={c.entry}><b>{c.people.join(', ')}</b> ({c.people.length}), in since <b>{momentText(c.in)}</b>, due out <b>{clockText(c.due)}</b>, {lateText(c.overdueBy)}. Gone to: <b>{c.going ?? 'not written'}</b>. Outside: {c.outside ?? 'not written'}{c.reach === undefined ? '' : `, ${c.reach}`}. Call: {c.call ?? 'not written'}.{c.heard !== undefined && ` Alarm heard ${clockText(c.heard)}.`}{c.called !== undefined && ` Help called ${clockText(c.called)}.`}</p>
        ))}
      </section>
      <section aria-labelledby="r-hazards">
        <h2 id="r-hazards">What waits on the way in</h2>
        {today.hazards.length === 0 ? <p>No open hazard is written down. What was not looked for may be there.</p> : <ol class="rescue-hazards">{today.hazards.map(h => <li key={h.entry}><span class="far">{farText(h.distance)}</span> <b>{h.sort}</b>, {h.where}{h.heading === undefined ? '' : `, ${h.heading}`}: {h.state}{h.action === undefined ? '' : `; ${h.action}`}{h.note === undefined ? '' : `. ${h.note}`}</li>)}</ol>}
        <p><b>Air:</b> {air.places.length === 0 ? 'never read.' : <>{air.findings.length === 0 ? 'nothing outside a limit when last read' : air.findings.slice(0, 3).map(f => f.answer.sentence).join(' ')}; last read {momentText(air.places.map(p => p.latest.taken).sort().at(-1)!)}.{air.notRead.length > 0 && ` Never read: ${air.notRead.join(', ')}.`}</>}</p>
      </section>
      {drawn && !('notEnough' in drawn) && <RescuePlan workings={drawn} today={today} />}
      <p class="small">Lodebook is not a life-saving device and has tested nothing. No one goes in after people without breathing apparatus and training for it.</p>
    </article>
  )
}
