import type { Making } from '../making.ts'
import { dayText, timeOn } from '../write/clock.ts'
import { ives } from '../write/crew.ts'
import { gob } from './gob.ts'

/** Broken and stacked, t/m3; for the truth only. */
const stacked = 1.62

/** The stacked waste in the old stope, taped as a length, a breadth and a mean height, each a little wrong. */
export function gobMeasured({ diary, numbers, ore }: Making): void {
  const rng = numbers('gob measured'), at = timeOn('2026-07-23', 15)
  const side = (true_: number) => `${(true_ * (1 + rng.normal(0, 0.08))).toFixed(1)} m`
  const height = gob.tonnes / stacked / (6.2 * 1.4)
  diary.write(ives, at, 'heap', {
    name: 'Gob in the old stope', sort: 'gob', place: `${ore.stopeCorners[0]!}, sill`, length: side(6.2), breadth: side(1.4), height: side(height),
    measured: dayText(at), note: 'Stacked by hand along the foot of the stope. Paced, not broken into.',
  })
}
