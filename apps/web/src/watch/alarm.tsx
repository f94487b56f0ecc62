import type { CallOut } from '@lodebook/answers'
import { useEffect, useRef } from 'preact/hooks'
import { now } from '../link/now.ts'
import { linkTo } from '../shell/route.ts'
import { clockText } from '../words/moment.ts'
import { lateText } from './late-text.ts'
import { notice } from './keep-watch.ts'
import { hush, isHushed } from './silence.ts'
import { mayRing, ring } from './siren.ts'
import { callOuts } from './watch.ts'
import { markHeard, markOut } from './write-call-out.ts'

const isLate = (c: CallOut): boolean => c.state === 'overdue' || c.state === 'call for help'

/** The alarm of the call-out clock, over whatever page is open: it fills the screen and rings until somebody on this device has heard it. */
export function Alarm() {
  const late = callOuts.value.filter(isLate), loud = late.filter(c => !isHushed(c.entry, c.state, now.value)), soon = callOuts.value.filter(c => c.state === 'due soon')
  useEffect(() => { ring(loud.length > 0); return () => ring(false) }, [loud.length > 0])
  useEffect(() => { notice(loud.map(c => `${c.people.join(', ')}, due ${clockText(c.due)}`).join('; ')) }, [loud.map(c => c.entry + c.state).join()])
  if (loud.length > 0) return <Full calls={loud} />
  if (late.length > 0) return <div class="call-line late" role="alert">{late.map(c => <Line key={c.entry} call={c} />)}</div>
  return soon.length > 0 ? <div class="call-line" role="status">{soon.map(c => <Line key={c.entry} call={c} />)}</div> : null
}

const Line = ({ call }: { readonly call: CallOut }) => (
  <p><b>{call.people.join(', ')}</b> due out {clockText(call.due)}, {lateText(call.overdueBy)}. <a href={linkTo('today', 'in')}>Who is in</a>{isLate(call) && <> · <a href={linkTo('today', 'rescue')}>For rescue</a></>}</p>
)

function Full({ calls }: { readonly calls: readonly CallOut[] }) {
  const box = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    const dialog = box.current!
    dialog.showModal()
    return () => dialog.close()
  }, [])
  const worst = calls.some(c => c.state === 'call for help')
  return (
    <dialog ref={box} class="alarm" role="alertdialog" aria-labelledby="alarm-title" aria-describedby="alarm-says" onCancel={e => e.preventDefault()}>
      <h1 id="alarm-title">{worst ? 'Call for help' : 'Overdue'}</h1>
      <div id="alarm-says">
        {calls.map(c => (
          <section key={c.entry}>
            <p class="alarm-who">{c.people.join(', ')}</p>
            <p>
              Due out {clockText(c.due)}: <b>{lateText(c.overdueBy)}</b>. In since {clockText(c.in)}.
              {c.going !== undefined && <> Gone to {c.going}.</>}{c.reach !== undefined && <> To reach them: {c.reach}.</>}
            </p>
            <p>{c.state === 'call for help' ? <b>Call {c.call ?? 'mine rescue or the emergency number'} now.</b> : <>Try to reach them from outside. Call {c.call ?? 'mine rescue or the emergency number'} at {clockText(new Date(c.callAt).toISOString())}.</>} <b>Do not go in after them.</b></p>
            <div class="alarm-do">
              <button type="button" class="btn strong" onClick={() => { hush(c.entry, c.state); void markHeard(c.entry) }}>I hear it: quiet for 5 minutes</button>
              <button type="button" class="btn" onClick={() => { void markOut(c.entry) }}>They are all out</button>
              <a class="btn" href={linkTo('today', 'rescue', c.entry)} onClick={() => hush(c.entry, c.state)}>What to tell rescue</a>
            </div>
          </section>
        ))}
      </div>
      {!mayRing.value && <p class="alarm-mute">This device makes no sound until its screen has been touched once.</p>}
      <p class="small">Lodebook is not a life-saving device. It rings only while this page is open and the device has power.</p>
    </dialog>
  )
}
