import { linkTo } from '../shell/route.ts'
import { BagsPage } from './finds/bags-page.tsx'
import { SignalsPage } from './finds/signals-page.tsx'
import { StoryPage } from './finds/story-page.tsx'

/** The pages of the screen, each under its own address. */
const pages = [
  { id: '', name: 'Signals and swept ground' },
  { id: 'bags', name: 'Bags' },
] as const

/** Finds: what did we see, hear and take, and exactly where? */
export function FindsScreen({ path }: { readonly path: readonly string[] }) {
  const [page = '', id] = path
  return (
    <>
      <nav class="pages" aria-label="Pages of Finds">
        <ul>{pages.map(p => <li key={p.id}><a href={linkTo('finds', ...p.id === '' ? [] : [p.id])} aria-current={p.id === page ? 'page' : undefined}>{p.name}</a></li>)}</ul>
      </nav>
      {page === 'at' && id !== undefined ? <StoryPage key={id} id={id} /> : page === 'bags' ? <BagsPage bag={id} /> : <SignalsPage />}
    </>
  )
}
