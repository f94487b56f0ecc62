import type { Making } from '../making.ts'
import { strikeText, wholeDegrees } from '../write/as-written.ts'
import { momentText, timeOn } from '../write/clock.ts'
import { crew, everyone, ives, moss, wren } from '../write/crew.ts'
import { readPlane, sets } from './structure.ts'

/** Usual low and high of each month at the place, °F. Invented, like the place. */
const months: readonly (readonly [string, number, number])[] = [
  ['January', 16, 36], ['February', 22, 42], ['March', 30, 53], ['April', 37, 61], ['May', 46, 72], ['June', 55, 84],
  ['July', 64, 93], ['August', 62, 90], ['September', 51, 79], ['October', 39, 64], ['November', 27, 48], ['December', 18, 37],
]

const asked = ['Outside person', 'Weather', 'Lights', 'Helmets', 'Meter', 'Not alone', 'Brow', 'Water', 'Animals', 'Old explosives'] as const
/** The last days on which they went in, and the one thing found on each. */
const days: readonly (readonly [day: string, item: typeof asked[number] | '', note: string])[] = [
  ['2026-10-07', '', ''], ['2026-10-09', 'Animals', 'fresh pack-rat nest behind the second set; left alone'], ['2026-10-12', 'Water', 'a little more and muddy after two days of rain'],
]

/** What the crew checks before going in, and what it knows of the draught, the rock and its joints. */
export function entering(making: Making): void {
  const { diary } = making, rng = making.numbers('entering'), spring = '2026-05-22'
  months.forEach(([month, low, high], i) => diary.write(moss, timeOn('2026-04-27', 20, i), 'outside', { month, low: `${low} F`, high: `${high} F`, source: 'the weather station in the valley (invented)' }))
  diary.write(moss, timeOn('2026-08-14', 18), 'fan', { name: 'small fan', freeFlow: '600 cfm', shutPressure: '250 Pa', duct: '8 in', length: '180 ft', piece: '20 ft', leak: 'usual', from: 'A0', to: 'A20', note: 'Runs off a generator that stands down the road, not at the portal.' })
  diary.write(moss, timeOn('2026-04-27', 20, 30), 'limit', { substance: 'oxygen', sort: 'minimum', value: '20', outside: 'below it', rule: 'our own', section: 'talked over at camp', source: 'the crew', note: 'we turn back before the law does' })

  const rocks: readonly Readonly<Record<string, string>>[] = [
    { place: 'A8', rqd: '70', strength: 'many blows', spacing: '10 in', condition: 'slightly rough, under 1 mm, slightly weathered', water: 'damp', orientation: 'fair', sets: 'two and random', roughness: 'rough and flat', alteration: 'stained only', stress: 'near the surface, loose' },
    { place: 'L5', rqd: '55', strength: 'several blows', spacing: '7 in', condition: 'slightly rough, under 1 mm, highly weathered', water: 'dripping', orientation: 'unfavourable', sets: 'three', roughness: 'smooth and wavy', alteration: 'slightly altered', stress: 'near the surface, loose' },
    { place: 'R9', rqd: '15', strength: 'one hammer blow', spacing: '2 in', condition: 'soft gouge over 5 mm', water: 'wet', orientation: 'very unfavourable', sets: 'crushed', roughness: 'gouge, no contact', alteration: 'clay, thick', stress: 'single crushed zone near the surface' },
  ]
  rocks.forEach((row, i) => diary.write(ives, timeOn(spring, 10, 20 * i), 'rock', { ...row, taken: spring, by: `${ives.name}, ${wren.name}` }))
  // Two places where the joints were read closely, each direction three times.
  for (const [at, from, to] of [[0, 'A8', 'A9'], [1, 'L5', 'L6']] as const) {
    sets.joints.forEach((plane, s) => {
      for (let i = 0; i < 3; i++) {
        const read = readPlane(rng, plane, 4)
        diary.write(ives, timeOn(spring, 13, 30 * at + 9 * s + 3 * i), 'structure', {
          feature: 'joint', place: `${from} + ${2 + 2 * i} ft toward ${to}, ${['left rib', 'back', 'right rib'][i]!}`, strike: strikeText(read.strike - making.ore.declination), dip: wholeDegrees(Math.min(90, read.dip)),
          roughness: 'rough', quality: 'good', taken: spring,
        })
      }
    })
  }
  const barred: readonly (readonly [string, string, string, string, string])[] = [
    ['2026-05-19', 'L5, back', '3', '14 in', ''], ['2026-05-22', 'L8, back', '5', '9 in', 'a slab over the prop, too tight to move'], ['2026-06-16', 'U1, back', '2', '6 in', ''], ['2026-08-17', 'L5, back', '1', '20 in', ''], ['2026-10-05', 'A21, back', '4', '8 in', ''],
  ]
  barred.forEach(([day, place, pieces, largest, left]) => diary.write(wren, timeOn(day, 9), 'scaling', { place, taken: momentText(timeOn(day, 8, 50)), pieces, largest, left, by: wren.name, stoodAt: 'under the last sound set' }))
  diary.write(moss, timeOn('2026-10-05', 8, 30), 'ground', { place: 'A0, back', taken: '2026-10-05', found: 'sound timber, nothing new', scaled: 'no', inspectedBy: everyone })

  days.forEach(([day, found, note], d) => asked.forEach((item, i) => {
    diary.write(crew[d % 2]!, timeOn(day, 7, 30 + i), 'check', { item, answer: item === found ? 'something found' : 'as it should be', taken: momentText(timeOn(day, 7, 30 + i)), note: item === found ? note : '' })
  }))
}
