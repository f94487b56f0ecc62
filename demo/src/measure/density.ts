import type { Making } from '../making.ts'
import { stated } from '../truth/stated.ts'
import { dayText, timeOn } from '../write/clock.ts'
import { moss } from '../write/crew.ts'

/** Six lumps of vein and two of wall rock weighed dry and in water, and one tub of broken vein. */
export function densityTests({ diary, numbers, bags }: Making): void {
  const rng = numbers('density'), channels = [...bags.values()].filter(b => b.method === 'channel')
  for (let i = 0; i < 8; i++) {
    const vein = i < 6, dry = rng.uniform(320, 900), rock = (vein ? stated.density : stated.wallDensity) + rng.normal(0, 0.035), at = timeOn('2026-07-23', 9, 15 * i)
    diary.write(moss, at, 'density', {
      material: vein ? 'vein quartz' : 'wall schist', bag: vein ? channels[i * 5 % Math.max(1, channels.length)]?.bag : undefined, dry: `${Math.round(dry)} g`,
      inWater: `${Math.round(dry * (1 - 0.998 / rock))} g`, temperature: '17 C', sealed: 'yes', taken: dayText(at),
    })
  }
  const tub = 0.0189, at = timeOn('2026-07-23', 12)
  diary.write(moss, at, 'density', {
    material: 'broken vein, as mucked', bulkMass: `${(tub * stated.density / 1.62 * 1000 * (1 + rng.normal(0, 0.02))).toFixed(1)} kg`, bulkVolume: '5 US gal', taken: dayText(at), note: 'Struck level in a pail.',
  })
}
