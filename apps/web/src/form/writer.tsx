import { useState } from 'preact/hooks'
import { book, desk } from '../link/desk.ts'
import { Chips } from './chips.tsx'

/** Who writes: asked once, then one line that can be changed. */
export function Writer() {
  const state = book.value!
  const [asking, ask] = useState(state.writer === ''), [name, setName] = useState(state.writer)
  const set = (to: string) => { setName(to); void desk.setWriter(to.trim()) }
  if (!asking) return <p class="writer">Written by <b>{state.writer}</b> <button type="button" class="btn quiet" onClick={() => ask(true)}>Somebody else</button></p>
  return (
    <div class="field">
      <label class="label" for="writer">Who is writing?</label>
      <input id="writer" type="text" class="box" value={name} autocomplete="off" onInput={e => set(e.currentTarget.value)} />
      <Chips of={state.people} value={name} label="People of the crew" onTake={(n) => { set(n); if (n !== '') ask(false) }} />
    </div>
  )
}
