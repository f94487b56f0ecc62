import type { Making } from '../making.ts'
import { timeOn } from '../write/clock.ts'
import { moss } from '../write/crew.ts'
import { gob } from './gob.ts'

const under = 'L9', below = 'V1'

/** What the crew thinks of doing next season, each as a piece of work that can be judged. Nothing is drawn. */
export function options({ diary, ore }: Making): void {
  const drift = ore.workings.find(w => w.name === 'Left drift')!.stations
  const pocket = drift.find(s => s === under) ?? drift.at(8)!
  const raise = ore.stations.has(below) ? below : pocket
  const given: readonly Readonly<Record<string, string>>[] = [
    { name: `the pocket by ${pocket}`, near: pocket, within: '8 ft', people: '3' },
    { name: `both sides of ${raise}`, near: raise, within: '10 ft', people: '3' },
    { name: 'wash the gob first', heap: 'gob', rock: `${gob.tonnes - 2} t`, people: '3', eachDay: '$2.00' },
    { name: 'drive for the lost part', metres: '13 ft', towards: 'the lost part', area: '160 ft2', people: '3', once: '$350.00', note: 'Timber for two sets and a share of the bond.' },
  ]
  given.forEach((texts, i) => diary.write(moss, timeOn('2026-10-07', 20, 5 * i), 'option', texts))
}
