import { openEntry } from '../../drawer/drawer-state.ts'
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
        {[...looks].sort((a, b) => b.times - a.times).map(look => (
          <li key={look.sentence}>
            <p>{look.sentence}</p>
            <p class="soft">{look.todo}</p>
            <p class="row row-start">{look.entries.slice(0, 3).map((id, i) => <button type="button" class="fig" key={id} onClick={() => openEntry(id)}>{i === 0 ? 'Open it' : `and the ${i === 1 ? 'next' : 'third'}`}</button>)}</p>
          </li>
        ))}
      </ol>
    </section>
  )
}
