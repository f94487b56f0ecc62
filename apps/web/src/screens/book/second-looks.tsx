import { useEffect, useState } from 'preact/hooks'
import type { EntryLine } from '../../bookkeeper/desk.ts'
import { openEntry } from '../../drawer/drawer-state.ts'
import { desk } from '../../link/desk.ts'
import { ask } from '../../link/reckoner.ts'

/** What does not fit the rest: told, never changed. The crew looks again and decides. */
export function SecondLooks() {
  const looks = ask('secondLooks').value ?? []
  if (looks.length === 0) return null
  return (
    <section class="section" aria-labelledby="looks">
      <h2 id="looks">Worth a second look: {looks.length}</h2>
      <p class="prose">These do not fit the rest. Nothing has been changed or left out.</p>
      <ol class="suspects">
        {[...looks].sort((a, b) => b.times - a.times).map(look => <li key={look.sentence}><p>{look.sentence}</p><p class="soft">{look.todo}</p><EntriesNamed ids={look.entries} /></li>)}
      </ol>
    </section>
  )
}

/** Entries by their names, each to be opened. */
function EntriesNamed({ ids }: { readonly ids: readonly string[] }) {
  const [lines, setLines] = useState<readonly EntryLine[]>([])
  useEffect(() => { void desk.entries([...ids]).then(setLines) }, [ids.join()])
  return <p class="named">{lines.map(({ entry, title }) => <button type="button" class="fig" key={entry.id} onClick={() => openEntry(entry.id)}>{title}</button>)}</p>
}
