import type { Making } from '../making.ts'
import { daysFrom, momentText, timeOn } from '../write/clock.ts'
import { ives, wren } from '../write/crew.ts'

const places = ['A2', 'A20', 'L12', 'R12', 'B3', 'W1'] as const
/** How much oxygen is short of fresh air at each place, %, and how much carbon dioxide it is fuller of, ppm: the dead ends are worst. */
const foul: Readonly<Record<typeof places[number], number>> = { A2: 0, A20: 0.15, L12: 0.35, R12: 0.5, B3: 0.25, W1: 1.5 }

/** Air readings from April to October: worse in still summer air, worst at the lip of the winze. */
export function air({ diary, numbers }: Making): void {
  const rng = numbers('air'), visits = daysFrom('2026-04-28', 151).filter((_, i) => i % 25 === 0)
  visits.forEach((day, v) => {
    // The portal draws in winter and stands still when it is as warm outside as inside.
    const outside = 8 + 17 * Math.sin(Math.PI * (v + 0.5) / visits.length), still = Math.max(0.35, 1 - Math.abs(outside - 11) / 18)
    places.forEach((station, i) => {
      const dry = i > 0 ? 10.6 + rng.normal(0, 0.3) : outside * 0.6 + 4
      const at = timeOn(day, 8, 10 + 14 * i), short = foul[station] * still * rng.lognormal(1, 0.25), deep = i > 0
      diary.write(i % 2 === 0 ? wren : ives, at, 'air', {
        place: station, taken: momentText(at), oxygen: `${(20.9 - short + rng.normal(0, 0.05)).toFixed(1)} %`, carbonMonoxide: '0 ppm', methane: '0 %', hydrogenSulphide: '0 ppm',
        carbonDioxide: v % 2 === 1 ? `${Math.round((450 + 8000 * short) / 50) * 50} ppm` : undefined, radon: v === 3 && deep ? `${Math.round(rng.lognormal(700, 0.5) / 10) * 10} Bq/m3` : undefined,
        airSpeed: i === 0 ? `${Math.max(0, 0.32 * (1 - still) + rng.normal(0.03, 0.01)).toFixed(2)} m/s` : undefined, airDirection: i === 0 ? (outside > 11 ? 'out' : 'in') : foul[station] > 0.4 ? 'still' : undefined,
        dryBulb: `${dry.toFixed(1)} C`, wetBulb: deep ? `${(dry - rng.uniform(0.3, 1)).toFixed(1)} C` : undefined,
        barometer: i === 0 ? `${(811 + rng.normal(0, 4)).toFixed(0)} hPa` : undefined, meter: 'four-gas meter', bumpTested: day, heldAt: station === 'W1' ? 'sill' : rng.pick(['waist', 'sill', 'head']),
        note: station === 'W1' && short > 1.2 ? 'Meter lowered on a line; nobody went down.' : undefined,
      })
    })
  })
}
