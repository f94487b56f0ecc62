import type { ComponentType } from 'preact'
import { lazyScreen } from './lazy-screen.tsx'

export interface Screen {
  /** Its part of the address. */
  readonly id: string
  readonly name: string
  /** The question it answers. */
  readonly asks: string
  /** Whether it has a place of its own in the row under a phone's screen, which holds four; the others are reached through the contents. */
  readonly atHand?: true
  readonly Shown: ComponentType<{ readonly path: readonly string[] }>
}

/** The screens of the app, in the order of the job. A screen is listed only when it works. */
export const screens: readonly Screen[] = [
  { id: 'today', name: 'Today', asks: 'Can we go in today?', atHand: true,
    Shown: lazyScreen(async () => (await import('../screens/today.tsx')).TodayScreen) },
  { id: 'access', name: 'Access', asks: 'What will it take to get in and out properly?',
    Shown: lazyScreen(async () => (await import('../screens/access.tsx')).AccessScreen) },
  { id: 'workings', name: 'Workings', asks: 'Where is everything?', atHand: true,
    Shown: lazyScreen(async () => (await import('../screens/workings.tsx')).WorkingsScreen) },
  { id: 'vein', name: 'Vein', asks: 'What does the vein do, how thick is it, and where did it go?',
    Shown: lazyScreen(async () => (await import('../screens/vein.tsx')).VeinScreen) },
  { id: 'finds', name: 'Finds', asks: 'What did we see, hear and take, and exactly where?', atHand: true,
    Shown: lazyScreen(async () => (await import('../screens/finds.tsx')).FindsScreen) },
  { id: 'lab', name: 'Lab', asks: 'What did it run, and can we believe it?',
    Shown: lazyScreen(async () => (await import('../screens/lab.tsx')).LabScreen) },
  { id: 'grade', name: 'Grade', asks: 'How much gold, where, and how sure are we?',
    Shown: lazyScreen(async () => (await import('../screens/grade.tsx')).GradeScreen) },
  { id: 'pay', name: 'Pay', asks: 'Is it worth our days?',
    Shown: lazyScreen(async () => (await import('../screens/pay.tsx')).PayScreen) },
  { id: 'next', name: 'Next', asks: 'Where does the next hour, or the next assay fee, do most good?',
    Shown: lazyScreen(async () => (await import('../screens/next.tsx')).NextScreen) },
  { id: 'write', name: 'Write', asks: 'What did you see, measure or take?', atHand: true,
    Shown: lazyScreen(async () => (await import('../screens/write.tsx')).WriteScreen) },
  { id: 'book', name: 'Book', asks: 'What is written, by whom and when?',
    Shown: lazyScreen(async () => (await import('../screens/book.tsx')).BookScreen) },
]

/** Every screen with its question: what a phone shows in place of the list beside a wide screen. */
const Contents = () => (
  <>
    <h1>Contents</h1>
    <ul class="contents-page">{screens.map(s => <li key={s.id}><a href={`#/${s.id}`}>{s.name}<span>{s.asks}</span></a></li>)}</ul>
  </>
)

export const contents: Screen = { id: 'contents', name: 'All', asks: 'What is in the book?', Shown: Contents }
