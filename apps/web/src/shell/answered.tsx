import { notEnough } from '@lodebook/answers'
import type { NotEnough } from '@lodebook/answers'
import type { ComponentChildren } from 'preact'
import { book } from '../link/desk.ts'
import { isBehind } from '../link/reckoner.ts'
import type { Asked, Part } from '../link/reckoner.ts'
import { NotEnoughShown } from '../words/not-enough.tsx'
import { linkTo } from './route.ts'

/**
 * A screen's answer in each of its states: being worked out for the first time, gone wrong, not enough to say, and there; and when a newer
 * one is on its way, the one shown says so.
 */
export function Answered<P extends Exclude<Part, 'secondLooks'>>({ asks, asked, children }: {
  readonly asks: string
  readonly asked: Asked<P>
  readonly children: (value: Exclude<NonNullable<Asked<P>['value']>, NotEnough>) => ComponentChildren
}) {
  const { value, trouble } = asked
  const said: object | undefined = value, whole: unknown = value // the compiler does not follow so many parts at once
  const head = <p class="asked">{asks}</p>
  if (trouble !== undefined) return <>{head}<div class="empty" role="alert"><h1 class="sentence">This could not be worked out.</h1><p>{trouble}</p><p>The book is as it was. Mend the entry that is named, or write on; it is tried again at the next entry.</p></div></>
  if (book.value?.postings === 0 && book.value.hub.state === 'asking') return <>{head}<p class="waiting" role="status">Fetching the book from the crew’s hub…</p></>
  if (!value || (asked.postings <= 0 && isBehind(asked))) return <>{head}<p class="waiting" role="status">{book.value ? 'Working it out…' : 'Opening the book…'}</p></>
  if (book.value && book.value.postings === 0) return <>{head}<EmptyBook /></>
  return (
    <div aria-busy={isBehind(asked)}>
      {head}
      {isBehind(asked) && <p class="behind" role="status">The book has grown; this is being worked out again.</p>}
      {said && notEnough(said) ? <NotEnoughShown answer={said} /> : children(whole as Exclude<NonNullable<Asked<P>['value']>, NotEnough>)}
    </div>
  )
}

const EmptyBook = () => (
  <div class="empty">
    <h1 class="sentence">Nothing is written on this device yet.</h1>
    <p>Say which mine it is and who is on the crew; then shoot the first line in from the portal.</p>
    <p>If the crew’s hub is within reach, its book comes by itself.</p>
    <p class="row"><a class="btn" href={linkTo('write', 'mine')}>Name the mine</a><a class="btn strong" href={linkTo('write', 'shot')}>Write the first shot</a></p>
  </div>
)
