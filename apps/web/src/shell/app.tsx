import { useEffect, useRef } from 'preact/hooks'
import { Drawer } from '../drawer/drawer.tsx'
import { Alarm } from '../watch/alarm.tsx'
import { newsOf } from '../link/announce.ts'
import { book, trouble } from '../link/desk.ts'
import { ChoiceRow } from './choice-row.tsx'
import { ground, groundName, grounds } from './ground.ts'
import { newer, takeNewer } from './newer.ts'
import { linkTo, route } from './route.ts'
import { contents, screens } from './screens.tsx'
import type { Screen } from './screens.tsx'
import { SyncLine } from './sync-line.tsx'

const main = 'main'
/** The frame of every screen: whose book it is, the contents, the ground, and the one screen that is open. */
export function App() {
  const [first, ...path] = route.value
  const screen = [...screens, contents].find(s => s.id === first) ?? screens[0]!
  useFreshScreen(screen, path)
  return (
    <div class="shell">
      <a class="btn skip" href={`#${main}`} onClick={(e) => { e.preventDefault(); document.getElementById(main)?.focus() }}>Go to the page</a>
      <header class="masthead">
        <div class="mine">{book.value?.name || 'Lodebook'}{book.value?.district && <div class="district">{book.value.district}</div>}</div>
        <div class="sync"><SyncLine short /></div>
        <button type="button" class="btn quiet ground-switch" onClick={() => { ground.value = ground.value === 'lamp' ? 'day' : 'lamp' }}>{ground.value === 'lamp' ? 'Day' : 'Lamp'}</button>
      </header>
      <nav class="contents" aria-label="Screens">
        <ul>
          {[...screens, contents].map(s => (
            <li key={s.id} class={s === contents ? 'all' : s.atHand ? undefined : 'away'}>
              <a href={linkTo(s.id)} aria-current={s === screen ? 'page' : undefined}>{s.name}<span class="asks">{s.asks}</span></a>
            </li>
          ))}
        </ul>
      </nav>
      <footer class="colophon"><SyncLine /><Grounds /></footer>
      <Alarm />
      <main id={main} class="main" tabIndex={-1}>
        {trouble.value !== undefined ? <Trouble says={trouble.value} /> : <screen.Shown path={path} />}
      </main>
      {newer.value && <div class="note-line"><span>A newer version of Lodebook is on this device.</span><button type="button" class="btn" onClick={takeNewer}>Change to it now</button></div>}
      <div class="off-screen" role="status">{newsOf.value}</div>
      <Drawer />
    </div>
  )
}

/** Day, lamp or print. */
const Grounds = () => <div class="grounds"><ChoiceRow label="Ground" of={grounds} value={ground.value} onChoose={(g) => { ground.value = g }} say={groundName} /></div>

const Trouble = ({ says }: { readonly says: string }) => (
  <div class="empty" role="alert">
    <h1 class="sentence">The book on this device could not be opened.</h1>
    <p>{says}</p>
    <p>Nothing has been changed. Shut other windows of Lodebook, make room on the device, and open it again.</p>
    <p><button type="button" class="btn strong" onClick={() => location.reload()}>Open it again</button></p>
  </div>
)

/** On a change of screen: its name in the window's title, the page from its top, and the focus at its head. */
function useFreshScreen(screen: Screen, path: readonly string[]): void {
  const began = useRef(true), where = [screen.id, ...path].join('/')
  useEffect(() => {
    document.title = `${screen.name} · Lodebook`
    if (began.current) { began.current = false; return }
    scrollTo({ top: 0 })
    document.getElementById(main)?.focus({ preventScroll: true })
  }, [where])
}
