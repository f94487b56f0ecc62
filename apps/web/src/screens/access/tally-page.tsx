import type { Access } from '@lodebook/answers'
import { useEffect, useState } from 'preact/hooks'
import { Figure } from '../../drawer/figure.tsx'
import { Writer } from '../../form/writer.tsx'
import { newsOf } from '../../link/announce.ts'
import { book, desk } from '../../link/desk.ts'
import { linkTo } from '../../shell/route.ts'
import { clockText, localDay, localMoment } from '../../words/moment.ts'
import { counted } from '../../words/number.ts'

interface Tipped { readonly entry: string, readonly at: string }

/** One button as large as a hand: each press is a load, kept before it is counted; the last can be taken back. */
export function TallyPage({ access, entry }: { readonly access: Access, readonly entry: string }) {
  const job = access.jobs.find(j => j.entry === entry), [today, setToday] = useState<readonly Tipped[]>([]), [busy, setBusy] = useState(false), [trouble, setTrouble] = useState('')
  const postings = book.value?.postings, name = job?.name ?? ''
  useEffect(() => {
    void desk.entriesOf('load').then(lines => setToday(lines.flatMap(({ entry: e }) => {
      const at = e.fields['at'], fits = !e.struck && typeof at === 'string' && sameJob(e.fields['job'], name) && at.slice(0, 10) === localDay(new Date())
      return fits ? [{ entry: e.id, at }] : []
    }).sort((a, b) => a.at < b.at ? -1 : 1)))
  }, [postings, name])
  if (!job) return <div class="empty"><h1 class="sentence">There is no such digging job.</h1><p><a class="btn" href={linkTo('access')}>Back to Access</a></p></div>

  const say = async (work: () => ReturnType<typeof desk.write>, news: string) => {
    if (book.value!.writer === '') { document.getElementById('writer')?.focus(); setTrouble('Say who is writing first.'); return }
    setBusy(true)
    try {
      const done = await work()
      setTrouble(done.saved ? '' : `Not saved: ${done.problems.find(p => !p.warning)?.message ?? 'something does not fit'}`)
      if (done.saved) newsOf.value = `${news} Saved on this device at ${clockText(done.at)}.`
    } catch (problem) { setTrouble(`Not saved: ${problem instanceof Error ? problem.message : String(problem)}`) } finally { setBusy(false) }
  }
  const now = () => { const at = new Date(), text = localMoment(at); return `${text.slice(0, 16)}:${String(at.getSeconds()).padStart(2, '0')}${text.slice(16)}` }
  const tip = () => say(() => desk.write(book.value!.writer, { kind: 'load', set: { job: job.name, at: now() } }), `Load ${today.length + 1} today.`)
  const last = today.at(-1)
  const undo = () => last && say(() => desk.write(book.value!.writer, { kind: 'load', entry: last.entry, set: {}, struck: true, why: 'pressed by mistake' }), 'The last load is taken back.')
  return (
    <div class="tally">
      <p><a href={linkTo('access')}>Access</a></p>
      <h1 class="sentence">{job.name}</h1>
      <Writer />
      <button type="button" class="tip" disabled={busy} onClick={() => { void tip() }}>
        <span class="tip-count">{today.length}</span>
        <span class="tip-says">{today.length === 1 ? 'load today' : 'loads today'}</span>
        <span class="tip-do">Press when one is tipped</span>
      </button>
      <p role="alert" class="problem">{trouble}</p>
      <button type="button" class="btn undo" disabled={busy || !last} onClick={() => { void undo() }}>{last ? `Take back the last, ${clockText(last.at)}` : 'Nothing to take back today'}</button>
      <p>{counted(job.tally.done, 'load')} in all; <Figure answer={job.tally.left}>{job.tally.left.sentence.replace(/\.$/, '')}</Figure>.</p>
      {job.tally.next && <p class="sentence"><Figure answer={job.tally.next.answer}>{job.tally.next.answer.sentence}</Figure></p>}
    </div>
  )
}

const sameJob = (said: unknown, name: string): boolean => typeof said === 'string' && said.trim().toLowerCase() === name.trim().toLowerCase()
