import { linkTo } from '../shell/route.ts'
import { BagsPage } from './finds/bags-page.tsx'
import { HowMuchPage } from './finds/how-much-page.tsx'
import { ScanPage } from './finds/scan-page.tsx'
import { SignalsPage } from './finds/signals-page.tsx'
import { StoryPage } from './finds/story-page.tsx'
import { WithGoldPage } from './finds/with-gold-page.tsx'

/** The pages of the screen, each under its own address. */
const pages = [
  { id: '', name: 'Signals and swept ground' },
  { id: 'bags', name: 'Bags' },
  { id: 'scan', name: 'Scan a label' },
  { id: 'how-much', name: 'How much to take' },
  { id: 'with-gold', name: 'What goes with gold' },
] as const

/** Finds: what did we see, hear and take, and exactly where? */
export function FindsScreen({ path }: { readonly path: readonly string[] }) {
  const [page = '', id] = path
  return (
    <>
      <nav class="pages" aria-label="Pages of Finds">
        <ul>{pages.map(p => <li key={p.id}><a href={linkTo('finds', ...p.id === '' ? [] : [p.id])} aria-current={p.id === page ? 'page' : undefined}>{p.name}</a></li>)}</ul>
      </nav>
      <PageShown page={page} id={id} />
    </>
  )
}

function PageShown({ page, id }: { readonly page: string, readonly id: string | undefined }) {
  switch (page) {
    case 'at': return id === undefined ? <SignalsPage /> : <StoryPage key={id} id={id} />
    case 'bags': return <BagsPage bag={id} />
    case 'scan': return <ScanPage />
    case 'how-much': return <HowMuchPage />
    case 'with-gold': return <WithGoldPage />
    default: return <SignalsPage />
  }
}
