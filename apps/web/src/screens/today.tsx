import type { ComponentType } from 'preact'
import type { Today } from '@lodebook/answers'
import { ask } from '../link/reckoner.ts'
import { Answered } from '../shell/answered.tsx'
import { linkTo } from '../shell/route.ts'
import { AirPage } from './today/air-page.tsx'
import { BreathingPage } from './today/breathing-page.tsx'
import { GroundPage } from './today/ground-page.tsx'
import { CheckPage } from './today/check-page.tsx'
import { InPage } from './today/in-page.tsx'
import { LimitsPage } from './today/limits-page.tsx'
import { RescuePage } from './today/rescue-page.tsx'

interface Leaf {
  readonly id: string
  readonly name: string
  readonly asks: string
  readonly Shown: ComponentType<{ readonly today: Today, readonly path: readonly string[] }>
}

const leaves: readonly Leaf[] = [
  { id: '', name: 'Check', asks: 'Can we go in today? The book can’t say. It says what to look at.', Shown: CheckPage },
  { id: 'in', name: 'Who is in', asks: 'Who is in, and when are they due out?', Shown: InPage },
  { id: 'air', name: 'Air', asks: 'What did the meter read, and which limit is it outside of?', Shown: AirPage },
  { id: 'breathing', name: 'How it breathes', asks: 'Where does the air come from, and when does it stop?', Shown: BreathingPage },
  { id: 'ground', name: 'Ground', asks: 'What was seen of the ground, and what can the joints cut loose?', Shown: GroundPage },
  { id: 'limits', name: 'Limits', asks: 'Which limits are the readings held against?', Shown: LimitsPage },
  { id: 'rescue', name: 'For rescue', asks: 'What do the rescuers need?', Shown: RescuePage },
]

/** Today: the check before going in, who is in, the air, how it moves, the ground, and the page for rescuers. */
export function TodayScreen({ path }: { readonly path: readonly string[] }) {
  const [id = ''] = path, leaf = leaves.find(l => l.id === id) ?? leaves[0]!
  return (
    <div class="today-screen">
      <nav class="leaves" aria-label="Today">
        <ul>{leaves.map(l => <li key={l.id}><a href={l.id === '' ? linkTo('today') : linkTo('today', l.id)} aria-current={l === leaf ? 'page' : undefined}>{l.name}</a></li>)}</ul>
      </nav>
      <Answered asks={leaf.asks} asked={ask('today')}>{today => <leaf.Shown today={today} path={path.slice(1)} />}</Answered>
    </div>
  )
}
