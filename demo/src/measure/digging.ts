import type { Making } from '../making.ts'
import { momentText, timeOn } from '../write/clock.ts'
import { crew, ives, moss, wren, type Person } from '../write/crew.ts'

/** Loose slope wash, one heaped barrow, m³, and how it swelled; the crew's book says what the tables say. */
const barrow = 0.065, swell = 1.25

interface Slide { readonly name: string, readonly long: number, readonly wide: number, readonly deep: number }
/** A tongue of slope wash over the sill: across, a parabola of the depth there; along, deepest a third of the way and run out at both ends. */
const shape = ({ deep, long }: Slide, at: number): number => deep * (at < long / 3
  ? Math.sin(Math.PI / 2 * (0.35 + 0.65 * at / (long / 3))) : Math.cos(Math.PI / 2 * (at - long / 3) / (long * 2 / 3)))
const across = (half: number, x: number): number => 1 - ((x - half) / half) ** 2

const spring: Slide = { name: 'Portal slough', long: 4, wide: 2.6, deep: 1.25 }
const autumn: Slide = { name: 'Storm slide at the portal', long: 4.5, wide: 2.8, deep: 0.95 }

/** Exact, by slices: two thirds of width times depth, summed along. */
function volumeOf(slide: Slide): number {
  const n = 3000
  return Array.from({ length: n }, (_, i) => 2 / 3 * slide.wide * shape(slide, (i + 0.5) * slide.long / n) * slide.long / n).reduce((a, b) => a + b, 0)
}

/** The two times the portal was dug out, the second not yet done, and the barrow ramp still to build. Its own numbers: nothing else moves. */
export function digging(making: Making): void {
  const { diary, dug } = making, rng = making.numbers('digging')
  const jobs: readonly (readonly [Slide, Person, string, string])[] = [[spring, wren, '2026-04-27', 'done'], [autumn, ives, '2026-10-03', 'at it']]
  jobs.forEach(([slide, writer, day, state], j) => {
    dug.set(slide.name, volumeOf(slide))
    diary.write(writer, timeOn(day, 10), 'digging', {
      name: slide.name, sort: 'clear', state, order: `${j + 1}`, material: 'slope wash: rock, gravel and clay', carrier: 'barrow', loadVolume: '2.3 cu ft', haul: writer.lengths === 'feet' ? '60 ft' : '18 m',
      haulGrade: '2 up', people: '3', spoil: 'words: bench below the track, clear of the gully', spoilLength: '6 m', spoilWidth: '4 m', spoilHeight: '1.2 m',
      note: j === 1 ? 'Came down in the night after two days of rain. The brow above it was looked at from outside before anyone dug.' : undefined,
    })
    for (let s = 0; s <= 4; s++) {
      const at = slide.long * s / 4, half = slide.wide / 2, read = (value: number) => Math.max(0, value + rng.normal(0, 0.03))
      const points = [0, 0.25, 0.5, 0.75, 1].map(p => [p * slide.wide, s === 4 ? 0 : read(shape(slide, at) * across(half, p * slide.wide))] as const)
      const put = (value: number) => writer.lengths === 'feet' ? (value / 0.3048).toFixed(1) : value.toFixed(2), unit = writer.lengths === 'feet' ? 'ft' : 'm'
      diary.write(writer, timeOn(day, 11, 6 * s), 'section', {
        job: slide.name, at: `${put(at)} ${unit}`, found: `${points.map(([x, z]) => `${put(x)}/${put(z)}`).join('; ')} ${unit}`,
        wanted: `0/0; ${put(slide.wide)}/0 ${unit}`, taken: day,
      })
    }
  })
  const springLoads = Math.round(volumeOf(spring) * swell / barrow)
  const days: readonly (readonly [Slide, string, number, number])[] = [
    [spring, '2026-04-28', 8, Math.round(springLoads * 0.52)], [spring, '2026-04-29', 8, springLoads - Math.round(springLoads * 0.52)], [autumn, '2026-10-05', 9, 31], [autumn, '2026-10-06', 9, 17],
  ]
  for (const [slide, day, hour, count] of days) {
    let minute = 0
    for (let i = 0; i < count; i++) {
      minute += rng.lognormal(4.2, 0.3) + (i === Math.floor(count / 2) ? 40 : 0)
      const at = timeOn(day, hour, Math.round(minute))
      diary.write(moss, at, 'load', { job: slide.name, at: momentText(at), people: crew.map(p => p.name).join(', ') })
    }
  }
  diary.write(ives, timeOn('2026-10-06', 18), 'digging', {
    name: 'Barrow ramp to the dump', sort: 'ramp', state: 'to do', order: '3', material: 'slope wash: rock, gravel and clay', carrier: 'barrow', haul: '18 m', haulGrade: '3 up', people: '3',
    rise: '0.9 m', width: '1.2 m', grade: '5', groundGrade: '1', crown: '5 cm',
  })
}
