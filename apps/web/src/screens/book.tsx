import { kinds } from '@lodebook/book'
import { useEffect, useState } from 'preact/hooks'
import type { ConflictLine } from '../bookkeeper/desk.ts'
import { openEntry } from '../drawer/drawer-state.ts'
import { groups } from '../form/shape.ts'
import { book, desk } from '../link/desk.ts'
import { linkTo } from '../shell/route.ts'
import { momentText } from '../words/moment.ts'
import { counted } from '../words/number.ts'
import { Device } from './book/device.tsx'
import { EntriesOfKind } from './book/entries-of-kind.tsx'
import { FromFile } from './book/from-file.tsx'
import { SecondLooks } from './book/second-looks.tsx'

/** Book: what is written, by whom and when. */
export function BookScreen({ path }: { readonly path: readonly string[] }) {
  const [what] = path
  if (!book.value) return <p class="waiting" role="status">Opening the book…</p>
  if (what === 'device') return <Device />
  if (what === 'file') return <FromFile />
  if (what !== undefined && kinds[what]) return <EntriesOfKind key={what} kind={kinds[what]} />
  return <Contents />
}

function Contents() {
  const state = book.value!
  const counts = Object.values(state.counts), entries = counts.reduce((sum, c) => sum + c.standing, 0), struck = counts.reduce((sum, c) => sum + c.struck, 0)
  return (
    <>
      <p class="asked">What is written, by whom and when?</p>
      <h1 class="sentence">{entries === 0 ? 'Nothing is written on this device yet.' : `${counted(entries, 'entry', 'entries')} in ${counted(state.postings, 'writing')}${struck > 0 ? `; ${struck} struck out` : ''}.`}</h1>
      <p class="row row-start">
        <a class="btn" href={linkTo('book', 'device')}>This device, the hub, and a copy of the book</a>
        <a class="btn" href={linkTo('book', 'file')}>Bring in a file of columns</a>
      </p>
      {state.conflicts > 0 && <Conflicts />}
      <SecondLooks />
      <div class="kind-groups">
        {groups.map(g => (
          <section class="section" key={g.name}>
            <h2>{g.name}</h2>
            <ul class="kind-list">
              {g.kinds.filter(id => state.counts[id]).map(id => (
                <li key={id}><a href={linkTo('book', id)}><span>{kinds[id]!.plural}</span><span class="n">{state.counts[id]!.standing}{state.counts[id]!.struck > 0 && <span class="soft small"> and {state.counts[id]!.struck} struck out</span>}</span></a></li>
              ))}
            </ul>
            {g.kinds.every(id => !state.counts[id]) && <p class="soft">None yet. <a href={linkTo('write', g.kinds[0]!)}>Write the first {kinds[g.kinds[0]!]!.label.toLowerCase()}</a></p>}
          </section>
        ))}
      </div>
    </>
  )
}

/** Where people wrote different things without knowing of each other. Whoever mends the field settles it. */
function Conflicts() {
  const [lines, setLines] = useState<readonly ConflictLine[]>([])
  useEffect(() => { void desk.conflicts().then(setLines) }, [book.value?.postings])
  return (
    <section class="section" aria-labelledby="conflicts">
      <h2 id="conflicts">Written differently by two people: {lines.length}</h2>
      <p class="prose">The last one stands until somebody who has seen both writes the field again.</p>
      <ul class="suspects">
        {lines.map(c => (
          <li key={c.entry + c.field}>
            <p><button type="button" class="fig" onClick={() => openEntry(c.entry)}>{c.title}</button>, {c.label.toLowerCase()}</p>
            <ul>{c.sayings.map((s, i) => <li key={s.clock}>{s.text} <span class="soft small">{s.by}, {momentText(new Date(Number(s.clock.slice(0, 13))).toISOString())}{i === c.sayings.length - 1 ? '; stands' : ''}</span></li>)}</ul>
            <a href={linkTo('write', 'mend', c.entry)}>Settle it</a>
          </li>
        ))}
      </ul>
    </section>
  )
}
