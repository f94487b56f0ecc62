import type { Entry, Field, FieldValue } from '@lodebook/book'
import { kinds } from '@lodebook/book'
import { useEffect, useState } from 'preact/hooks'
import type { EntryLine } from '../bookkeeper/desk.ts'
import { newsOf } from '../link/announce.ts'
import { book, desk } from '../link/desk.ts'
import { linkTo } from '../shell/route.ts'
import { comesTo, fieldText } from '../words/field-text.ts'
import { momentText } from '../words/moment.ts'
import { shut } from './drawer-state.ts'
import { PictureShown } from './picture-shown.tsx'

/** One entry: what it says, who wrote it and when, and everything it said before. It is struck out or mended here, never erased. */
export function EntryPage({ id }: { readonly id: string }) {
  const [line, setLine] = useState<EntryLine | 'none'>()
  const postings = book.value?.postings
  useEffect(() => {
    let current = true
    void desk.entries([id]).then(([found]) => { if (current) setLine(found ?? 'none') })
    return () => { current = false }
  }, [id, postings])
  if (!line) return <p class="waiting" id="drawer-title">Looking it up…</p>
  if (line === 'none') return <p id="drawer-title">This entry is not on this device yet. It will be here once the hub has been reached.</p>
  const { entry, title } = line, kind = kinds[entry.kind]
  const names = Object.keys(kind?.fields ?? {}).filter(name => entry.fields[name] !== undefined || (entry.history[name]?.length ?? 0) > 0)
  return (
    <>
      <p class="asked">{kind?.label ?? entry.kind}{entry.struck ? ', struck out' : ''}</p>
      <h2 id="drawer-title" class={entry.struck ? 'drawer-sentence struck' : 'drawer-sentence'}>{title}</h2>
      <p class="soft small">Written by {entry.createdBy}, {momentText(entry.createdAt)}{entry.changedAt !== entry.createdAt ? `; changed ${momentText(entry.changedAt)}` : ''}</p>
      {entry.struck && <p class="doubt">Struck out{entry.struckWhy ? `: ${entry.struckWhy}` : ''}. It counts for nothing until it is restored.</p>}
      <dl class="entry-fields">
        {names.map(name => <FieldShown key={name} name={name} field={kind!.fields[name]!} entry={entry} />)}
      </dl>
      <Strike entry={entry} />
    </>
  )
}

function FieldShown({ name, field, entry }: { readonly name: string, readonly field: Field, readonly entry: Entry }) {
  const value = entry.fields[name], sayings = entry.history[name] ?? []
  return (
    <>
      <dt>{field.label}</dt>
      <dd>
        {value === undefined ? <span class="soft">taken out</span> : <Value value={value} field={field} />}
        {sayings.length > 1 && (
          <details class="history">
            <summary>Changed {sayings.length - 1 === 1 ? 'once' : `${sayings.length - 1} times`}</summary>
            <ol>{sayings.map(s => (
              <li key={s.posting}>{s.value === null ? <i>nothing</i> : fieldText(s.value, field)} <span class="soft small">{s.by}, {momentText(momentOfClock(s.clock))}{s.why ? `: ${s.why}` : ''}</span></li>
            ))}
            </ol>
          </details>
        )}
      </dd>
    </>
  )
}

/** A posting's clock begins with its milliseconds since 1970. */
const momentOfClock = (clock: string): string => new Date(Number(clock.slice(0, 13))).toISOString()

function Value({ value, field }: { readonly value: FieldValue, readonly field: Field }) {
  if (typeof value === 'object' && 'sha256' in value) return <PictureShown picture={value} />
  const text = fieldText(value, field)
  if (typeof value === 'object' && 'unit' in value) return <>{text} <span class="soft">= {comesTo(value)}</span></>
  return <>{text}</>
}

/** Kinds that have a page of their own among the finds: where it lies, and what lies within a metre. */
const findKinds = new Set(['target', 'sample', 'relic', 'photo'])

function Strike({ entry }: { readonly entry: Entry }) {
  const [asking, ask] = useState(false), [why, setWhy] = useState(''), [trouble, setTrouble] = useState('')
  const strike = async () => {
    const writer = book.value!.writer
    if (writer === '') { setTrouble('Say who is writing first, on the page Write.'); return }
    const done = await desk.write(writer, { entry: entry.id, kind: entry.kind, set: {}, struck: !entry.struck, ...(why.trim() === '' ? {} : { why: why.trim() }) })
    if (!done.saved) { setTrouble(done.problems[0]?.message ?? 'It could not be written.'); return }
    ask(false)
    newsOf.value = entry.struck ? 'Restored' : 'Struck out; it can be restored at any time'
  }
  return (
    <div class="entry-actions">
      {!asking && findKinds.has(entry.kind) && <a class="btn" href={linkTo('finds', 'at', entry.id)} onClick={shut}>Find it again</a>}
      {!asking && <a class="btn" href={linkTo('write', 'mend', entry.id)} onClick={shut}>Mend</a>}
      {!asking && <button type="button" class="btn" onClick={() => ask(true)}>{entry.struck ? 'Restore' : 'Strike out'}</button>}
      {asking && (
        <form onSubmit={(e) => { e.preventDefault(); void strike() }}>
          <label class="label" for="strike-why">{entry.struck ? 'Why it is restored' : 'Why it is struck out'} <span class="soft small">· may be left out</span></label>
          <input id="strike-why" type="text" class="box" value={why} onInput={e => setWhy(e.currentTarget.value)} />
          <div class="row"><button type="button" class="btn quiet" onClick={() => ask(false)}>Leave it</button><button type="submit" class="btn strong">{entry.struck ? 'Restore it' : 'Strike it out'}</button></div>
        </form>
      )}
      <p class="problem" role="alert">{trouble}</p>
    </div>
  )
}
