import type { Kind } from '@lodebook/book'
import { useEffect, useMemo, useState } from 'preact/hooks'
import type { EntryLine } from '../../bookkeeper/desk.ts'
import { openEntry } from '../../drawer/drawer-state.ts'
import { shapeOf } from '../../form/shape.ts'
import { book, desk } from '../../link/desk.ts'
import { linkTo } from '../../shell/route.ts'
import { fieldText } from '../../words/field-text.ts'
import { dayText } from '../../words/moment.ts'
import { counted } from '../../words/number.ts'

const atOnce = 100, columns = 5

/** All entries of one kind as a page of the field book, latest first, with a search over everything written in them. */
export function EntriesOfKind({ kind }: { readonly kind: Kind }) {
  const [lines, setLines] = useState<readonly EntryLine[]>(), [sought, seek] = useState(''), [most, setMost] = useState(atOnce)
  const postings = book.value?.postings
  useEffect(() => { void desk.entriesOf(kind.id).then(found => setLines([...found].reverse())) }, [kind, postings])
  const fields = shapeOf(kind).first.filter(name => !kind.title.includes(name) && kind.fields[name]!.is.type !== 'blob').slice(0, columns)
  const texts = useMemo(() => new Map(lines?.map(({ entry, title }) =>
    [entry.id, `${title} ${Object.entries(entry.fields).map(([n, v]) => fieldText(v, kind.fields[n])).join(' ')} ${entry.createdBy}`.toLowerCase()])), [lines])
  if (!lines) return <p class="waiting" role="status">Looking them up…</p>
  const found = lines.filter(({ entry }) => texts.get(entry.id)!.includes(sought.trim().toLowerCase()))
  return (
    <>
      <p class="crumb"><a href={linkTo('book')}>Book</a></p>
      <h1>{kind.plural}</h1>
      <div class="controls">
        <div class="search"><label class="label" for="sought">Find</label><input id="sought" type="search" class="box" value={sought} onInput={e => seek(e.currentTarget.value)} /></div>
        <a class="btn" href={linkTo('write', kind.id)}>Write a {kind.label.toLowerCase()}</a>
      </div>
      <p class="soft" role="status">{counted(found.length, kind.label.toLowerCase(), kind.plural.toLowerCase())}{sought !== '' && ` with “${sought}”`}</p>
      <div class="scroll-x" tabIndex={0} role="group" aria-label={kind.plural}>
        <table class="entry-table">
          <thead><tr><th scope="col">{kind.label}</th>{fields.map(n => <th scope="col" key={n}>{kind.fields[n]!.label}</th>)}<th scope="col">By</th><th scope="col">Written</th></tr></thead>
          <tbody>{found.slice(0, most).map(({ entry, title }) => (
            <tr key={entry.id} class={entry.struck ? 'struck' : undefined}>
              <th scope="row"><button type="button" class="fig" onClick={() => openEntry(entry.id)}>{title.replace(`${kind.label} `, '')}</button></th>
              {fields.map(n => <td key={n}>{entry.fields[n] === undefined ? '' : fieldText(entry.fields[n], kind.fields[n])}</td>)}
              <td>{entry.createdBy}</td><td class="nowrap">{dayText(entry.createdAt)}</td>
            </tr>
          ))}
          </tbody>
        </table>
      </div>
      {found.length > most && <p><button type="button" class="btn" onClick={() => setMost(most + 400)}>Show more</button></p>}
    </>
  )
}
