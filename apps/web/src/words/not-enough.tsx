import type { NotEnough } from '@lodebook/answers'
import { kinds } from '@lodebook/book'
import { linkTo } from '../shell/route.ts'

/** There is not enough to say: what is missing, which entry would fill it, and a button that starts it. */
export function NotEnoughShown({ answer }: { readonly answer: NotEnough }) {
  return (
    <div class="empty">
      <p class="sentence">{answer.sentence}</p>
      <ul class="wanted">
        {answer.wanted.map(({ kind, why }) => (
          <li key={kind + why}><span>{why}</span><a class="btn" href={linkTo('write', kind)}>Write a {kinds[kind]?.label.toLowerCase() ?? kind}</a></li>
        ))}
      </ul>
      {answer.cautions.length > 0 && <ul class="cautions">{answer.cautions.map(c => <li key={c}>{c}</li>)}</ul>}
    </div>
  )
}
