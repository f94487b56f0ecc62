import type { Making } from '../making.ts'
import { geographic } from '../truth/geographic.ts'
import { timeOn } from '../write/clock.ts'
import { ives, wren } from '../write/crew.ts'

/** Two GPS fixes: one at the portal, one at the post above the outcrop. Good to so many metres, one standard deviation. */
export function ties(making: Making): void {
  const rng = making.numbers('ties'), top = making.ore.workings.find(working => working.name === 'Hill')!.stations.at(-1)!
  const fix = (station: string, accuracy: number): string => {
    const [e, n, u] = making.ore.stations.get(station)!.point
    const at = geographic([e + rng.normal(0, accuracy), n + rng.normal(0, accuracy), 0])
    return `${at.latitude.toFixed(6)}, ${at.longitude.toFixed(6)}, ${Math.round(u + rng.normal(0, 2 * accuracy))} m ± ${accuracy} m`
  }
  making.diary.write(wren, timeOn('2026-05-04', 8, 40), 'tie', { station: 'A0', place: fix('A0', 3), accuracy: '3 m', taken: '2026-05-04', source: 'hand GPS, averaged ten minutes' })
  making.diary.write(ives, timeOn('2026-05-13', 15, 20), 'tie', { station: top, place: fix(top, 4), accuracy: '4 m', taken: '2026-05-13', source: 'hand GPS at the corner post' })
}
