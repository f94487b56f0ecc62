import { useState } from 'preact/hooks'
import { newsOf } from '../../link/announce.ts'
import { book, desk } from '../../link/desk.ts'
import { ask } from '../../link/reckoner.ts'
import { Answered } from '../../shell/answered.tsx'
import { ChoiceRow } from '../../shell/choice-row.tsx'
import { go, linkTo } from '../../shell/route.ts'
import { localMoment } from '../../words/moment.ts'
import { Camera } from './camera.tsx'

const acts = ['open it', 'received', 'carried', 'dried', 'crushed', 'sent', 'kept'] as const
type Act = typeof acts[number]

/** Bags by their labels: one is opened, or many, one after the other, are written as received, carried, dried and so on. */
export function ScanPage() {
  return <Answered asks="Which bag is this?" asked={ask('bags')}>{() => <Scanning />}</Answered>
}

function Scanning() {
  const [act, setAct] = useState<Act>('open it'), [list, setList] = useState<readonly string[]>([]), [typed, setTyped] = useState(''), [trouble, setTrouble] = useState('')
  const read = (bag: string) => {
    setTrouble('')
    if (act === 'open it') { go('finds', 'bags', bag); return }
    setList(before => before.includes(bag) ? before : [...before, bag])
    newsOf.value = `${bag} read`
  }
  const save = async () => {
    const who = book.value!.writer
    if (who === '') { setTrouble('Say who is writing first, on the page Write.'); return }
    const done = await desk.write(who, { kind: 'custody', set: { bags: list, act, who, when: localMoment(new Date()), counted: true } })
    if (!done.saved) { setTrouble(done.problems[0]?.message ?? 'It could not be written.'); return }
    newsOf.value = `${list.length} bags ${act}, kept on this device`
    setList([])
  }
  return (
    <>
      <h1 class="sentence">Point the camera at a label, or type its number.</h1>
      <div class="section"><ChoiceRow label="What is done with it" show of={acts} value={act} onChoose={(next) => { setAct(next); setList([]) }} /></div>
      <Camera onRead={read} />
      <form class="typed" onSubmit={(e) => { e.preventDefault(); if (typed.trim() !== '') { read(typed.trim()); setTyped('') } }}>
        <label class="label" for="typed-bag">Number on the label</label>
        <div class="with-unit"><input id="typed-bag" class="box" type="text" autocapitalize="characters" value={typed} onInput={e => setTyped(e.currentTarget.value)} /><button type="submit" class="btn">Take it</button></div>
      </form>
      {act !== 'open it' && (
        <section class="section" aria-labelledby="read-bags">
          <h2 id="read-bags">{list.length === 0 ? 'No bag read yet' : `${list.length} to be written as ${act}`}</h2>
          <ul class="chips">{list.map(bag => (
            <li key={bag}><button type="button" class="btn" aria-label={`Take ${bag} off the list`} onClick={() => setList(list.filter(b => b !== bag))}>{bag} ×</button></li>
          ))}
          </ul>
          <p class="row begin">
            <button type="button" class="btn strong" disabled={list.length === 0} onClick={() => { void save() }}>Write them as {act}</button>
            {list.length > 0 && <a class="btn" href={linkTo('write', 'custody', 'with', 'bags', list.join(', '), 'act', act)}>With seal and note</a>}
          </p>
        </section>
      )}
      <p class="problem" role="alert">{trouble}</p>
    </>
  )
}
