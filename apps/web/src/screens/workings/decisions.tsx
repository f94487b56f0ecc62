import type { LeftOut, Suspect } from '@lodebook/answers'
import { useState } from 'preact/hooks'
import { openEntry } from '../../drawer/drawer-state.ts'
import { newsOf } from '../../link/announce.ts'
import { book, desk } from '../../link/desk.ts'

/** Writes what the crew decides of a reading; the words of what stands in the way, '' when it is kept. */
async function decide(entry: string, leave: string, why: string): Promise<string> {
  const writer = book.value?.writer ?? ''
  if (writer === '') return 'Say who is writing first, on the Write page.'
  const kind = leave === 'whole tie' || await isTie(entry) ? 'tie' : 'shot'
  const done = await desk.write(writer, { kind, entry, set: { leaveOut: leave, ...why.trim() === '' ? {} : { leaveOutWhy: why.trim() } } })
  if (!done.saved) return `Not saved: ${done.problems.find(p => !p.warning)?.message ?? 'something does not fit'}`
  newsOf.value = leave === 'nothing' ? 'Taken back: the reading counts again.' : `Left out: ${leave}. The map is worked out again.`
  return ''
}

const isTie = async (entry: string): Promise<boolean> => (await desk.entries([entry]))[0]?.entry.kind === 'tie'

const named: Readonly<Record<string, string>> = {
  azimuth: 'the foresight', backsight: 'the backsight', distance: 'the distance', inclination: 'the inclination', 'back inclination': 'the back inclination', 'whole tie': 'the tie',
}

/** A reading that the rest disagrees with, and the crew's choices: open it, or leave it or one that fits as well out. */
export function SuspectLine({ suspect }: { readonly suspect: Suspect }) {
  const [why, setWhy] = useState(''), [trouble, setTrouble] = useState('')
  const { entry, leave, others } = suspect, id = `why-${entry}-${suspect.reading}`
  const choices = [
    ...leave === undefined ? [] : [{ entry, leave, says: named[leave] ?? leave }],
    ...others.map(o => ({ ...o, says: o.entry === entry ? named[o.leave] ?? o.leave : o.says })),
  ]
  return (
    <li>
      <p>{suspect.sentence}</p>
      <p class="row row-start">
        <button type="button" class="btn" onClick={() => openEntry(entry)}>Open it</button>
        {choices.map(c => <button key={c.entry + c.leave} type="button" class="btn" onClick={() => { void decide(c.entry, c.leave, why).then(setTrouble) }}>Leave out {c.says}</button>)}
      </p>
      {choices.length > 0 && <p><label class="small" for={id}>Because</label> <input class="box" id={id} value={why} onInput={e => setWhy(e.currentTarget.value)} autocomplete="off" /></p>}
      {trouble !== '' && <p class="problem" role="alert">{trouble}</p>}
    </li>
  )
}

/** What the crew has left out, each of which can be taken back. */
export function LeftOutList({ leftOut }: { readonly leftOut: readonly LeftOut[] }) {
  const [trouble, setTrouble] = useState('')
  if (leftOut.length === 0) return null
  return (
    <>
      <h3>Left out by the crew</h3>
      <ul class="plain-list">
        {leftOut.map(l => <li key={l.entry}>{l.sentence} <button type="button" class="btn" onClick={() => { void decide(l.entry, 'nothing', '').then(setTrouble) }}>Take it back</button></li>)}
      </ul>
      {trouble !== '' && <p class="problem" role="alert">{trouble}</p>}
    </>
  )
}
