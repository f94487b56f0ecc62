import type { Making } from '../making.ts'
import { timeOn } from '../write/clock.ts'
import { ives, moss, wren } from '../write/crew.ts'

/** What the crew put right itself: an inclination signed the wrong way, a target written twice, a collector's name, a note added by two at once. */
export function secondThoughts({ diary }: Making): void {
  const find = (kind: string, nth: number) => diary.notes.filter(({ draft }) => draft.kind === kind && draft.why === undefined)[nth]
  const shot = find('shot', 30)
  if (shot !== undefined) {
    diary.mend(wren, timeOn('2026-05-07', 20), shot.draft.entry, { note: 'Candle smoke on the clino glass; wiped and read again.' }, 'forgot to write it')
    diary.mend(ives, timeOn('2026-05-07', 20, 2), shot.draft.entry, { note: 'Read twice.' }, 'for the record', false)
  }
  const target = diary.write(ives, timeOn('2026-06-12', 17), 'target', { mark: 'T57', place: 'L6 + 4 ft toward L7, back', instrument: 'VLF detector', strength: '5', outcome: 'open', found: '2026-06-12' })
  diary.strike(ives, timeOn('2026-06-12', 19), target, 'written twice')
  const sample = find('sample', 3)
  if (sample !== undefined) {
    diary.mend(moss, timeOn('2026-07-12', 19), sample.draft.entry, { collector: 'Ives Candlewick', note: 'Collector put right from the tag.' }, 'wrong name on the sheet')
  }
}
