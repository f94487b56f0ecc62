import { Figure, rangeText } from '../../drawer/figure.tsx'
import { ask } from '../../link/reckoner.ts'

/** Gob, dumps, muck and tailings, each with what it holds. */
export function HeapList() {
  const { value } = ask('heaps')
  if (!value) return null
  return (
    <section class="section" aria-labelledby="heaps">
      <h2 id="heaps">Heaps of broken rock</h2>
      {'notEnough' in value ? <p class="prose">{value.sentence} <a href="#/write/heap">Measure a heap</a></p> : (
        <ul class="inputs">
          {value.heaps.map(h => (
            <li key={h.entry}>
              <span>{h.name}</span>
              <span><Figure answer={h.ounces} /> <span class="soft small">{rangeText(h.ounces)}</span> in <Figure answer={h.tonnes} /> at <Figure answer={h.grade} /></span>
            </li>
          ))}
          {value.untold.map(u => <li key={u.entry}><span>{u.name}</span><span class="soft">{u.why}</span></li>)}
        </ul>
      )}
    </section>
  )
}
