import { signal } from '@preact/signals'
import { useState } from 'preact/hooks'
import { book } from '../link/desk.ts'
import { Chips } from './chips.tsx'

/** Who is writing on this device; remembered until changed. */
export const writer = signal(localStorage.getItem('writer') ?? '')

const setWriter = (name: string): void => {
  writer.value = name.trim()
  localStorage.setItem('writer', writer.value)
}

/** Who writes: asked once, then one line that can be changed. */
export function Writer() {
  const [asking, ask] = useState(writer.value === ''), [name, setName] = useState(writer.value)
  if (!asking) return <p class="writer">Written by <b>{writer.value}</b> <button type="button" class="btn quiet" onClick={() => ask(true)}>Somebody else</button></p>
  return (
    <div class="field">
      <label class="label" for="writer">Who is writing?</label>
      <input id="writer" type="text" class="box" value={name} autocomplete="off" onInput={(e) => { setName(e.currentTarget.value); setWriter(e.currentTarget.value) }} />
      <Chips of={book.value?.people ?? []} value={name} label="People of the crew" onTake={(n) => { setName(n); setWriter(n); if (n !== '') ask(false) }} />
    </div>
  )
}
