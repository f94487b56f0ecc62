import { useState } from 'preact/hooks'
import { book, desk, persisted } from '../../link/desk.ts'
import { ChoiceRow } from '../../shell/choice-row.tsx'
import { ground, groundName, grounds } from '../../shell/ground.ts'
import { linkTo } from '../../shell/route.ts'
import { longOf } from '../../shell/sync-line.tsx'
import { localDay } from '../../words/moment.ts'
import { counted } from '../../words/number.ts'

/** Where the book is kept, whether the browser has promised to keep it, what the hub has, and a copy to carry away. */
export function Device() {
  const { hub, device, postings, name } = book.value!
  const [says, setSays] = useState('')
  const copy = async () => {
    setSays('Making it…')
    const text = await desk.exportBook(), address = URL.createObjectURL(new Blob([text], { type: 'application/jsonl' }))
    const link = Object.assign(document.createElement('a'), { href: address, download: `${(name || 'book').replace(/[^\p{L}\p{N}]+/gu, '-').toLowerCase()}-${localDay(new Date())}.jsonl` })
    link.click()
    URL.revokeObjectURL(address)
    setSays(`${counted(postings, 'writing')} in the copy.`)
  }
  return (
    <>
      <p class="crumb"><a href={linkTo('book')}>Book</a></p>
      <h1>This device</h1>
      <dl class="facts">
        <dt>The hub</dt>
        <dd>
          <p>{longOf(hub)}</p>
          {hub.state !== 'none' && <p><button type="button" class="btn" onClick={() => { void desk.syncNow() }}>Ask the hub now</button></p>}
          {hub.state === 'unjoined' && <Unjoined hubName={hub.book?.name ?? ''} />}
          {hub.state === 'other-book' && (
            <p><button type="button" class="btn" onClick={() => { void desk.openHubsBook() }}>Lay this book aside here and open the hub’s{hub.book?.name ? `, ${hub.book.name}` : ''}</button></p>
          )}
        </dd>
        <dt>Kept here</dt>
        <dd>{counted(postings, 'writing')}</dd>
        <dt>Kept for good</dt>
        <dd>{promiseText(persisted.value)}</dd>
        <dt>Ground</dt>
        <dd><ChoiceRow label="Ground to read on" of={grounds} value={ground.value} onChoose={(g) => { ground.value = g }} say={groundName} /></dd>
        <dt>This device writes as</dt><dd>{device}</dd>
      </dl>
      <section class="section" aria-labelledby="copy">
        <h2 id="copy">A copy of the whole book</h2>
        <p class="prose">One line for every writing, with who, when and what it said before. Any text editor opens it; any Lodebook takes it in.</p>
        <p><button type="button" class="btn strong" onClick={() => { void copy() }}>Save a copy</button> <output>{says}</output></p>
      </section>
    </>
  )
}

/** What the browser answered, and what follows from it. */
function promiseText(answer: boolean | undefined): string {
  if (answer === undefined) return 'The browser has not answered yet.'
  return answer ? 'The browser has agreed not to clear the book away.'
    : 'The browser has not agreed to keep the book when it runs short of room. Putting Lodebook on the home screen often changes its mind; let the hub have everything before you clear anything.'
}

const Unjoined = ({ hubName }: { readonly hubName: string }) => (
  <div class="prose">
    <p>The hub keeps a book{hubName ? `, ${hubName},` : ''} and so does this device. Are they the same mine’s?</p>
    <p class="row row-start"><button type="button" class="btn" onClick={() => { void desk.joinHub() }}>Yes: put them together</button><button type="button" class="btn" onClick={() => { void desk.openHubsBook() }}>No: lay this one aside, open the hub’s</button></p>
  </div>
)
