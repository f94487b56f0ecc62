import { linkTo } from '../../shell/route.ts'
import { callOuts } from '../../watch/watch.ts'
import { clockText } from '../../words/moment.ts'
import { lateText } from '../../watch/late-text.ts'

/** Who is in, in one line, and the way to write them in or out. */
export function InStrip() {
  const calls = callOuts.value
  return (
    <div class="in-strip">
      {calls.length === 0
        ? <p>Nobody is written as in.</p>
        : calls.map(c => <p key={c.entry} class={c.state === 'in' ? undefined : 'doubt'}><b>{c.people.join(', ')}</b> in since {clockText(c.in)}, due out {clockText(c.due)}, {lateText(c.overdueBy)}</p>)}
      <a class="btn" href={linkTo('today', 'in')}>{calls.length === 0 ? 'Going in' : 'In and out'}</a>
    </div>
  )
}
