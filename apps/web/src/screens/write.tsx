import { kinds } from '@lodebook/book'
import { useEffect, useState } from 'preact/hooks'
import type { EntryLine, FormHelp } from '../bookkeeper/desk.ts'
import { openEntry } from '../drawer/drawer-state.ts'
import { carried } from '../form/carried.ts'
import { EntryForm } from '../form/entry-form.tsx'
import { groups } from '../form/shape.ts'
import { newsOf } from '../link/announce.ts'
import { book, desk } from '../link/desk.ts'
import { go, linkTo } from '../shell/route.ts'
import { clockText, localDay } from '../words/moment.ts'

/** Write: capture first. A sample and a shot are one tap away; everything else is two. */
export function WriteScreen({ path }: { readonly path: readonly string[] }) {
  const [what, ...rest] = path
  if (what === 'mend' && rest[0] !== undefined) return <Mend key={rest[0]} id={rest[0]} />
  if (what !== undefined && kinds[what]) return <WriteOne key={path.join('/')} kindId={what} begun={begunWith(rest)} />
  return <Choose />
}

/** What an address has a form begin with: `named/x`, or `with/field/text/field/text`. */
function begunWith([how, ...words]: readonly string[]): Readonly<Record<string, string>> {
  if (how === 'named' && words[0] !== undefined) return { name: words[0] }
  if (how !== 'with') return {}
  return Object.fromEntries(words.flatMap((field, i) => i % 2 === 0 && words[i + 1] !== undefined ? [[field, words[i + 1]!]] : []))
}

const firstTwo: readonly string[] = ['sample', 'shot']

function Choose() {
  const begun = book.value?.begun ?? []
  return (
    <>
      <h1 class="sentence">What did you see, measure or take?</h1>
      {begun.length > 0 && (
        <ul class="begun">{begun.map(id => kinds[id] && <li key={id}><a class="btn" href={linkTo('write', id)}>Go on with the {kinds[id].label.toLowerCase()} that is half written</a></li>)}</ul>
      )}
      <div class="first-two">
        {firstTwo.map(id => <a key={id} class="btn strong" href={linkTo('write', id)}>{kinds[id]!.label}</a>)}
      </div>
      <nav class="kinds" aria-label="Other kinds of entry">
        {groups.map(g => (
          <section key={g.name}>
            <h2>{g.name}</h2>
            <ul>{g.kinds.filter(id => !firstTwo.includes(id)).map(id => <li key={id}><a class="btn" href={linkTo('write', id)}>{kinds[id]!.label}</a></li>)}</ul>
          </section>
        ))}
      </nav>
      <Today />
    </>
  )
}

function WriteOne({ kindId, begun }: { readonly kindId: string, readonly begun: Readonly<Record<string, string>> }) {
  const kind = kinds[kindId]!
  const [help, setHelp] = useState<FormHelp>(), [round, setRound] = useState(0), [says, setSays] = useState('')
  // On a device that is new to the book the first form waits until the hub has been asked, so that it begins from what is written.
  const isReady = book.value !== undefined && (book.value.postings > 0 || book.value.hub.state !== 'asking')
  useEffect(() => { if (isReady) void desk.formHelp(kindId).then(setHelp) }, [kindId, round, isReady])
  return (
    <>
      <p class="crumb"><a href={linkTo('write')}>Write</a></p>
      <h1>{kind.label}</h1>
      {kindId === 'sample' && <p><a href={linkTo('finds', 'how-much')}>How much to take, before the bag is filled</a></p>}
      {says && <p class="saved" role="status"><b>{says}</b><SentOn /></p>}
      {help && book.value
        ? (
            <EntryForm
              key={round}
              kind={kind}
              help={help}
              begin={{ ...carried(kindId, help, new Date()), ...begun }}
              onSaved={(_, news) => { setSays(news); newsOf.value = news; setHelp(undefined); setRound(round + 1); scrollTo({ top: 0 }) }}
            />
          )
        : <p class="waiting">Opening the book…</p>}
      <Today />
    </>
  )
}

function Mend({ id }: { readonly id: string }) {
  const [line, setLine] = useState<EntryLine | 'none'>(), [help, setHelp] = useState<FormHelp>()
  useEffect(() => {
    void desk.entries([id]).then(async ([found]) => {
      if (found) setHelp(await desk.formHelp(found.entry.kind, id))
      setLine(found ?? 'none')
    })
  }, [id])
  if (line === 'none') return <p>This entry is not on this device.</p>
  if (!line || !help || !book.value) return <p class="waiting">Looking it up…</p>
  const kind = kinds[line.entry.kind]!
  return (
    <>
      <p class="crumb"><a href={linkTo('write')}>Write</a></p>
      <h1>Mend: {line.title}</h1>
      <p class="soft">What it said before is kept, with who and when.</p>
      <EntryForm kind={kind} help={help} begin={{}} mend={line.entry} onSaved={(entry, news) => { newsOf.value = news; addEventListener('hashchange', () => { openEntry(entry) }, { once: true }); go('write') }} />
    </>
  )
}

/** Whether the hub has what was just saved. */
function SentOn() {
  const hub = book.value?.hub
  if (!hub) return null
  return <span> {hub.state === 'level' ? 'The hub has it too.' : hub.state === 'none' ? 'There is no hub at this address; it is kept here.' : hub.state === 'sending' || hub.state === 'asking' ? 'Sending it to the hub…' : 'The hub can’t be reached; it will be sent when it can.'}</span>
}

/** What was written on this device today, latest first. */
function Today() {
  const [lines, setLines] = useState<readonly EntryLine[]>([])
  const postings = book.value?.postings
  useEffect(() => {
    const midnight = new Date(`${localDay(new Date())}T00:00`)
    void desk.writtenSince(midnight.toISOString()).then(setLines)
  }, [postings])
  return (
    <section class="section" aria-labelledby="today">
      <h2 id="today">Written here today</h2>
      {lines.length === 0 && <p class="soft">Nothing yet. The first thing you save stands here.</p>}
      <ul class="today">
        {lines.map(({ entry, title }) => (
          <li key={entry.id}>
            <time class="soft" dateTime={entry.createdAt}>{clockText(entry.createdAt)}</time>
            <button type="button" class={entry.struck ? 'fig struck' : 'fig'} onClick={() => openEntry(entry.id)}>{title}</button>
            {!entry.struck && <a class="mend" href={linkTo('write', 'mend', entry.id)} aria-label={`Mend ${title}`}>Mend</a>}
          </li>
        ))}
      </ul>
    </section>
  )
}
