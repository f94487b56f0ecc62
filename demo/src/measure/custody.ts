import type { Making } from '../making.ts'
import { momentText, timeOn } from '../write/clock.ts'
import { firstLaboratory, ives, moss, secondLaboratory, wren, type Person } from '../write/crew.ts'

/** Seals on the two boxes that went to the laboratories. */
const seals = { first: 'S-4201', second: 'S-4202' }

/** The roll of labels, and the bags' way: carried, dried, crushed, sent, received. A careless crew's second box arrives with its seal broken. */
export function custody({ diary, careless }: Making): void {
  const samples = diary.notes.filter(({ draft }) => draft.kind === 'sample' && draft.why === undefined && draft.set.method !== 'piece')
    .map(n => ({ bag: n.draft.set.bag as string, day: n.draft.set.taken as string }))
  const write = (person: Person, at: number, texts: Readonly<Record<string, string | undefined>>) =>
    diary.write(person, at + 10 * 60_000, 'custody', { who: person.name, when: momentText(at), ...texts })
  diary.write(moss, timeOn('2026-06-27', 19), 'label-roll', { prefix: 'B-', first: '1', last: `${Math.ceil((samples.length + 8) / 40) * 40}`, digits: '3', printed: '2026-06-27', by: wren.name })
  for (const day of new Set(samples.map(s => s.day))) {
    write(wren, timeOn(day, 17, 30), { act: 'carried', bags: run(samples.filter(s => s.day === day).map(s => s.bag)), to: 'the shed at camp', intact: 'whole', counted: 'yes' })
  }
  const all = run(samples.map(s => s.bag))
  write(moss, timeOn('2026-07-10', 8), { act: 'dried', bags: all, to: 'trays in the shed' })
  write(moss, timeOn('2026-07-12', 16), { act: 'crushed', bags: all, note: 'Wet, with respirators on, over eight days from now; the seals were cut bag by bag.' })
  const sentTo = (laboratory: string) => diary.notes.filter(n => n.draft.kind === 'assay' && n.draft.set.laboratory === laboratory).map(n => n.draft.set.bag as string).join(', ')
  const ship = (person: Person, laboratory: string, seal: string, sent: string, received: string, intact: string) => {
    const bags = sentTo(laboratory)
    if (bags === '') return
    write(person, timeOn(sent, 10), { act: 'sent', bags, to: laboratory, seal, counted: 'yes' })
    write(moss, timeOn(received, 15), { act: 'received', bags, who: laboratory, seal, intact, note: `By telephone from the laboratory.${intact === 'broken' ? ' The lid of the box had come open on the road; all bags were there.' : ''}` })
  }
  ship(ives, firstLaboratory, seals.first, '2026-07-25', '2026-07-29', 'whole')
  ship(ives, secondLaboratory, seals.second, '2026-08-22', '2026-08-27', careless ? 'broken' : 'whole')
}

/** 'B-001 to B-014', as bags of one day follow each other. */
const run = (bags: readonly string[]): string => bags.length < 3 ? bags.join(', ') : `${bags[0]!} to ${bags.at(-1)!}`
