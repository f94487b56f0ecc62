import type { CallOut, Today } from '@lodebook/answers'
import { useState } from 'preact/hooks'
import { openEntry } from '../../drawer/drawer-state.ts'
import { Chips } from '../../form/chips.tsx'
import { Writer } from '../../form/writer.tsx'
import { newsOf } from '../../link/announce.ts'
import { book, desk } from '../../link/desk.ts'
import { now } from '../../link/now.ts'
import { linkTo } from '../../shell/route.ts'
import { lateText } from '../../watch/late-text.ts'
import { callOuts, hubSaid, hubWatches, trueNow } from '../../watch/watch.ts'
import { dueLater, markCalled, markOut, momentNow } from '../../watch/write-call-out.ts'
import { clockText, localDay, localMoment, momentText } from '../../words/moment.ts'
import { WatchHere } from './watch-here.tsx'

/** Who is in and when they are due out; going in, coming out. */
export function InPage({ today }: { readonly today: Today }) {
  const calls = callOuts.value, past = today.goings.filter(g => g.out !== undefined).slice(0, 8)
  return (
    <>
      <h1 class="sentence">{calls.length === 0 ? 'Nobody is written as in.' : calls.map(c => `${c.people.join(', ')}: due out ${clockText(c.due)}, ${lateText(c.overdueBy)}.`).join(' ')}</h1>
      <ClockLine />
      {book.value && <Writer />}
      {calls.map(c => <OneIn key={c.entry} call={c} />)}
      <GoIn today={today} />
      <WatchHere />
      <section class="section" aria-labelledby="past">
        <h2 id="past">Before</h2>
        {past.length === 0 ? <p class="soft">Nobody has been written in and out yet.</p> : (
          <ul class="plain-list">{past.map(g => <li key={g.entry}><button type="button" class="fig" onClick={() => openEntry(g.entry)}>{momentText(g.in)}: {g.people.join(', ')}, out {clockText(g.out!)}</button>{Date.parse(g.out!) > Date.parse(g.due) && <span class="soft"> · {lateText((Date.parse(g.out!) - Date.parse(g.due)) / 60_000)}</span>}</li>)}</ul>
        )}
      </section>
      <p class="cautions">Lodebook is not a life-saving device. The alarm rings at the hub and on devices that have this app open, have power, and can reach the hub or hold the entry. A person outside with a watch comes first.</p>
    </>
  )
}

/** Which clock counts, and how far this device's is off. */
function ClockLine() {
  const skew = hubSaid.value?.skew ?? 0, minutes = Math.round(Math.abs(skew) / 60_000)
  return (
    <p class="soft small" role="status">
      {hubWatches.value ? 'The hub keeps the clock.' : 'The hub does not answer: this device keeps the clock by itself, and other devices ring only for what they hold.'}
      {Math.abs(skew) >= 60_000 && <b> This device’s clock is {minutes} min {skew > 0 ? 'slow' : 'fast'} beside the hub’s; times here are by the hub’s.</b>}
    </p>
  )
}

function OneIn({ call }: { readonly call: CallOut }) {
  const [says, setSays] = useState('')
  const later = (minutes: number) => {
    const from = Math.max(Date.parse(call.due), trueNow())
    void dueLater(call.entry, localMoment(new Date(from + minutes * 60_000))).then(setSays)
  }
  return (
    <section class={`section one-in ${call.state.replaceAll(' ', '-')}`} aria-label={call.people.join(', ')}>
      <p class="big-time"><b>{clockText(call.due)}</b> <span>due out, {lateText(call.overdueBy)}</span></p>
      <p>{call.people.join(', ')} in since {clockText(call.in)}{call.going !== undefined && <>, gone to {call.going}</>}. Outside: {call.outside ?? <b>nobody is written</b>}{call.reach !== undefined && <>, {call.reach}</>}. {call.state === 'call for help' ? <b>Call {call.call ?? 'mine rescue or the emergency number'} now.</b> : <>Help is called for at {clockText(new Date(call.callAt).toISOString())}{call.call === undefined ? '' : `: ${call.call}`}.</>}</p>
      {call.heard !== undefined && <p class="soft small">Alarm heard {clockText(call.heard)} by {call.heardBy ?? 'somebody'}.</p>}
      {call.called !== undefined && <p class="soft small">Help called {clockText(call.called)}.</p>}
      {says !== '' && <p class="problem" role="alert">{says}</p>}
      <div class="row row-start">
        <button type="button" class="btn strong" onClick={() => { void markOut(call.entry).then(setSays) }}>They are all out</button>
        <button type="button" class="btn" onClick={() => later(30)}>Half an hour later</button>
        <button type="button" class="btn" onClick={() => later(60)}>An hour later</button>
        {call.overdueBy >= 0 && call.called === undefined && <button type="button" class="btn" onClick={() => { void markCalled(call.entry).then(setSays) }}>Help has been called</button>}
        <a class="btn" href={linkTo('today', 'rescue', call.entry)}>What to tell rescue</a>
      </div>
    </section>
  )
}

const hoursAhead = [1, 2, 4, 6, 8] as const

function GoIn({ today }: { readonly today: Today }) {
  const last = today.goings[0], people = book.value?.people ?? []
  const [who, setWho] = useState(''), [due, setDue] = useState(''), [outside, setOutside] = useState(last?.outside ?? ''), [reach, setReach] = useState(last?.reach ?? ''), [going, setGoing] = useState(''), [call, setCall] = useState(last?.call ?? ''), [says, setSays] = useState<readonly string[]>([])
  void now.value // the choices of a time move on with the clock
  const dueMoment = due === '' ? undefined : momentOn(due)
  const save = async () => {
    const writer = book.value?.writer ?? '', names = who.split(',').map(w => w.trim()).filter(Boolean)
    if (writer === '') { setSays(['Say who is writing first.']); return }
    if (names.length === 0) { setSays(['Say who goes in.']); return }
    if (dueMoment === undefined) { setSays(['Say when they are due out.']); return }
    if (Date.parse(dueMoment) <= trueNow()) { setSays([`Due out: ${due} has passed already by the hub’s clock; say a time still to come.`]); return }
    const set = { people: names, in: momentNow(), due: dueMoment, ...(outside.trim() === '' ? {} : { outside: outside.trim() }), ...(reach.trim() === '' ? {} : { reach: reach.trim() }), ...(going.trim() === '' ? {} : { going: going.trim() }), ...(call.trim() === '' ? {} : { call: call.trim() }) }
    const done = await desk.write(writer, { kind: 'going-in', set })
    if (!done.saved) { setSays(done.problems.filter(p => !p.warning).map(p => p.message)); return }
    newsOf.value = 'Written as in.'
    setSays([])
    setWho('')
    setDue('')
    scrollTo({ top: 0 })
  }
  return (
    <section class="section go-in" aria-labelledby="go-in">
      <h2 id="go-in">Going in</h2>
      <div class="field"><label class="label" for="go-who">Who</label><input id="go-who" class="box" value={who} autocomplete="off" onInput={e => setWho(e.currentTarget.value)} /><Chips many of={people} value={who} label="People" onTake={setWho} /></div>
      <div class="field">
        <label class="label" for="go-due">Due out</label>
        <input id="go-due" type="time" class="box" value={due} onInput={e => setDue(e.currentTarget.value)} />
        <Chips of={hoursAhead.map(h => `${h} h`)} value="" label="In so many hours" onTake={(t) => { if (t !== '') setDue(localMoment(new Date(trueNow() + Number.parseInt(t, 10) * 3_600_000)).slice(11, 16)) }} />
        {dueMoment !== undefined && <output class="echo">{lateText((trueNow() - Date.parse(dueMoment)) / 60_000)}{dueMoment.slice(0, 10) === localDay(new Date(trueNow())) ? '' : ', tomorrow'}</output>}
      </div>
      <div class="field"><label class="label" for="go-outside">Outside person</label><input id="go-outside" class="box" value={outside} autocomplete="off" onInput={e => setOutside(e.currentTarget.value)} /><Chips of={people.filter(p => !who.includes(p))} value={outside} label="Outside person" onTake={setOutside} /></div>
      <details class="more"><summary>Where to, how to reach them, whom to call</summary>
        <div class="fields">
          <div class="field"><label class="label" for="go-where">Where to</label><input id="go-where" class="box" value={going} autocomplete="off" onInput={e => setGoing(e.currentTarget.value)} /></div>
          <div class="field"><label class="label" for="go-reach">How to reach them</label><input id="go-reach" class="box" value={reach} autocomplete="off" onInput={e => setReach(e.currentTarget.value)} /></div>
          <div class="field"><label class="label" for="go-call">Whom to call for help</label><input id="go-call" class="box" value={call} autocomplete="off" onInput={e => setCall(e.currentTarget.value)} /></div>
        </div>
      </details>
      {says.map(s => <p class="problem" role="alert" key={s}>{s}</p>)}
      <p class="row row-start"><button type="button" class="btn strong" onClick={() => { void save() }}>They go in now</button></p>
    </section>
  )
}

/** The next time of day at which it is so late: today, or tomorrow when that is long past. A time of the last hour is taken as meant for today. */
function momentOn(clock: string): string {
  const at = new Date(trueNow()), [h, m] = clock.split(':').map(Number)
  at.setHours(h ?? 0, m ?? 0, 0, 0)
  const passed = trueNow() - at.getTime()
  return localMoment(new Date(passed > 12 * 3_600_000 ? at.getTime() + 86_400_000 : at.getTime()))
}
