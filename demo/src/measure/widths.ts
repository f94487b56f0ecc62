import type { Making } from '../making.ts'
import type { Exposure } from '../truth/exposure.ts'
import { inclination, smallWidth, strikeText } from '../write/as-written.ts'
import { dayText, timeOn } from '../write/clock.ts'
import { ives, veinName, wren } from '../write/crew.ts'
import { placeWords } from './place-words.ts'
import { tapeAcross } from './tape-across.ts'
import { tools } from './tools.ts'
import { veinSpots } from './vein-spots.ts'

const count = 36
const filling = ['quartz', 'quartz, iron-stained', 'ribbon quartz', 'quartz, some pyrite', 'quartz, vuggy', 'quartz, manganese']

/** Vein widths measured in several directions, among them one down the dip, which is no width at all. */
export function widths(making: Making): void {
  const { ore, diary } = making, rng = making.numbers('widths'), spots = veinSpots(ore, rng, count)
  spots.forEach((spot, i) => {
    const person = i % 2 === 0 ? wren : ives, at = timeOn(i < spots.length / 2 ? '2026-05-25' : '2026-05-26', 9, 9 * (i % 18))
    const tape = tapeAcross(rng, ore.vein, spot, 0.5), width = ore.width(spot.vein)
    const measured = Math.max(0.05, width * tape.stretch + rng.normal(0, tools.width + 0.03 * width))
    const slipped = making.careless && i === 7
    const entry = diary.write(person, at, 'width', {
      vein: veinName, place: placeWords(rng, person, spot.section, spot.side, spot.side === 'back' ? undefined : spot.height),
      measured: smallWidth(person, slipped ? width * 2.9 : measured, i), direction: slipped ? 'down the dip' : tape.direction,
      trend: slipped || tape.trend === undefined ? undefined : strikeText(tape.trend - ore.declination + rng.normal(0, 2)),
      plunge: slipped || tape.plunge === undefined ? undefined : inclination(tape.plunge + rng.normal(0, 2)),
      materials: rng.pick(filling), gouge: rng.chance(0.3) ? smallWidth(person, Math.min(measured, rng.uniform(0.01, 0.04)), 1) : undefined,
      hangingWall: nearDyke(making, spot) ? 'dyke' : 'schist', footwall: 'schist', taken: dayText(at),
    })
    making.spots.set(entry, { point: spot.point, vein: spot.vein })
    if (slipped) {
      making.mistakes.push({ sort: 'width down the dip', entries: [entry], right: `${width.toFixed(2)} m`,
        sentence: 'A width was taped down the dip of the vein, not across it, and is nearly three times too wide.' })
    }
  })
}

const nearDyke = ({ ore }: Making, spot: Exposure): boolean => Math.abs(ore.dyke.off(spot.point)) < ore.dyke.thickness / 2 + 0.4
