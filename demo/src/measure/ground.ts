import type { Making } from '../making.ts'
import { daysFrom, timeOn } from '../write/clock.ts'
import { crew, ives, wren } from '../write/crew.ts'

type Row = readonly [place: string, found: string, scaled: string, action: string]
const rows: readonly Row[] = [
  ['A0', 'rotten timber, drummy', 'no', 'new sets before anybody passes'], ['A3', 'drummy', 'yes', ''], ['A8', 'no timber, nothing new', 'no', ''], ['A14', 'dripping', 'no', ''],
  ['A21', 'open joint', 'yes', 'marked, look again each week'], ['L2', 'nothing new', 'no', ''], ['L5', 'loose slab', 'yes', 'came down with the bar'], ['L8', 'drummy, open joint', 'yes', 'prop set'],
  ['L11', 'crushed timber', 'no', 'keep out until it is replaced'], ['L14', 'nothing new', 'no', ''], ['R4', 'dripping', 'no', ''], ['R8', 'running water, fresh fall', 'no', 'crushed ground at the fault'],
  ['R9', 'fresh fall', 'no', 'roped off'], ['C5', 'nothing new', 'no', ''], ['U1', 'drummy', 'yes', ''], ['B2', 'sound timber', 'no', ''], ['G2', 'loose slab', 'no', 'stacked waste leans; not to be touched from below'], ['V2', 'open joint', 'yes', ''],
]

/** Ground notes over the season, and the hazards that stay. */
export function ground({ diary }: Making): void {
  const days = daysFrom('2026-04-28', 54)
  rows.forEach(([place, found, scaled, action], i) => {
    const day = days[3 * i]!
    diary.write(i % 2 === 0 ? wren : ives, timeOn(day, 8, 30), 'ground', { place: `${place}, back`, taken: day, found, scaled, action, inspectedBy: `${crew[i % 3]!.name}, ${crew[(i + 1) % 3]!.name}` })
  })
  const hazards: readonly Record<string, string>[] = [
    { sort: 'winze or shaft', place: 'L6, sill', state: 'marked off', action: 'planked and roped', note: 'Water stands in it. Depth not known.' },
    { sort: 'bad ground', place: 'R9, back', state: 'open', action: 'crushed ground at the fault; bar and props before anybody works there' },
    { sort: 'rotten timber', place: 'A0, back', state: 'dealt with', action: 'three new sets' },
    { sort: 'old explosives', place: 'words: tin box on a ledge by L13, not touched', state: 'marked off', action: 'withdrew, reported to the authority, waiting for them', note: 'Nobody goes nearer than the rope.' },
    { sort: 'bad air', place: 'W1', state: 'marked off', action: 'oxygen short at the lip in summer; read before passing' },
    { sort: 'animals', place: 'C8, back', state: 'open', action: 'a few bats in spring; keep out until they have left, and ask the agency' },
  ]
  hazards.forEach((row, i) => diary.write(wren, timeOn('2026-04-29', 15, 6 * i), 'hazard', { ...row, seen: '2026-04-29' }))
}
