import type { Degrees, Enu } from '@lodebook/reckon'
import type { Making, Spot } from '../making.ts'
import type { Random } from '../random.ts'
import { onSection, sectionAt, type Section } from '../truth/section.ts'
import { stated } from '../truth/stated.ts'
import { axesOf, add, planeOf, times, turn } from '../truth/vectors.ts'
import { strikeText, wholeDegrees } from '../write/as-written.ts'
import { dayText, timeOn } from '../write/clock.ts'
import type { Texts } from '../write/diary.ts'
import { faultName, ives, veinName, wren } from '../write/crew.ts'
import { placeWords } from './place-words.ts'
import { tools } from './tools.ts'
import { veinSpots } from './vein-spots.ts'

/** The joint sets and the grain of the country rock: true strike and dip, degrees. */
export const sets = {
  joints: [{ strike: 312, dip: 78 }, { strike: 222, dip: 52 }, { strike: 20, dip: 18 }],
  foliation: { strike: 61, dip: 38 },
} as const
/** Ninety readings in all. */
const counts = { vein: 30, fault: 8, striae: 7, joint: 24, foliation: 10, contact: 8, stringer: 3 }

/** A plane as it is read: its pole turned a little at random, by so many degrees in each of two directions. */
export function readPlane(rng: Random, plane: { strike: Degrees, dip: Degrees }, sigma: number): { strike: Degrees, dip: Degrees } {
  const { along, down, normal } = axesOf(plane), k = sigma * Math.PI / 180
  return planeOf(add(normal, add(times(along, rng.normal(0, k)), times(down, rng.normal(0, k)))))
}

/** Readings of the vein, the fault and its grooves, the dyke's walls, joints and foliation, by compass: strikes are from magnetic north. */
export function structure(making: Making): void {
  const { ore, diary } = making, rng = making.numbers('structure')
  let n = 0
  function write(feature: string, section: Section, side: string, plane: { strike: Degrees, dip: Degrees }, more: Texts = {}, spot?: Spot): void {
    const person = n % 3 === 0 ? ives : wren, at = timeOn(['2026-05-18', '2026-05-19', '2026-05-20', '2026-05-21'][Math.floor(n / 23)]!, 9, 12 * (n % 23))
    const read = readPlane(rng, plane, tools.plane), strike = read.strike - ore.declination
    const entry = diary.write(person, at, 'structure', {
      feature, place: placeWords(rng, person, section, side),
      ...(n % 7 === 5 ? { dipDirection: strikeText(strike + 90) } : { strike: strikeText(strike) }), dip: wholeDegrees(Math.min(90, read.dip)),
      quality: rng.weighted([['good', 5], ['fair', 4], ['poor', 1]] as const), taken: dayText(at), ...more,
    })
    making.spots.set(entry, spot ?? { point: onSection(section, 0, section.offsets.down) })
    n++
  }
  for (const spot of veinSpots(ore, rng, counts.vein)) {
    write('vein', spot.section, spot.side, ore.vein.attitude(spot.vein), { name: veinName }, { point: spot.point, vein: spot.vein })
  }
  const right = ore.workings.find(w => w.name === 'Right drift')!
  const atFault = () => sectionAt(ore.stations, right, crossing(making, right.name, p => ore.fault.beyond(p) ? -1 : 1) + rng.uniform(-0.3, 0.3))
  for (let i = 0; i < counts.fault; i++) {
    const more = { name: faultName, infill: 'gouge, crushed quartz', roughness: 'slickensided', sense: i % 3 === 0 ? 'normal' : undefined }
    write('fault', atFault(), rng.pick(['left rib', 'right rib', 'back']), ore.fault, more)
  }
  for (let i = 0; i < counts.striae; i++) {
    const rake = wholeDegrees(turn(stated.fault.rake + rng.normal(0, 5)))
    write('striae', atFault(), rng.pick(['left rib', 'right rib']), ore.fault, { name: faultName, rake, roughness: 'slickensided', sense: i % 2 === 0 ? 'normal' : 'not known' })
  }
  const driven = ore.workings.filter(w => w.sort === 'adit' || w.sort === 'drift' || w.sort === 'crosscut')
  const anywhere = () => { const w = rng.pick(driven); return sectionAt(ore.stations, w, rng.uniform(0.5, w.path.length - 0.5)) }
  const wall = () => rng.pick(['left rib', 'right rib', 'back'])
  for (let i = 0; i < counts.joint; i++) {
    const spacing = `${rng.pick([4, 6, 8, 12, 16, 24])} in`
    write('joint', anywhere(), wall(), sets.joints[i % 3]!, { spacing, roughness: rng.pick(['rough', 'smooth']), infill: rng.chance(0.3) ? 'clay' : undefined })
  }
  for (let i = 0; i < counts.foliation; i++) write('foliation', anywhere(), wall(), sets.foliation)
  const adit = ore.workings.find(w => w.name === 'Adit')!
  // Both walls of the dyke: twice in the adit, then in the right drift before and past the fault.
  const dykeWall = (p: Enu, side: number) => ore.dyke.off(p) - side * ore.dyke.thickness / 2
  const near = [adit, adit, right].flatMap(w => [-1, 1].map(side => ({ w, at: crossing(making, w.name, p => dykeWall(p, side)) })))
  const far = [-1, 1].map(side => ({ w: right, at: crossing(making, right.name, p => ore.fault.beyond(p) ? dykeWall(p, side) : Number.NaN) }))
  for (const { w, at } of [...near, ...far].slice(0, counts.contact)) {
    const note = ore.fault.beyond(w.path.at(at).point) ? 'Wall of the dyke again, past the fault.' : undefined
    write('contact', sectionAt(ore.stations, w, at), wall(), ore.dyke, { name: 'dyke', note })
  }
  for (const spot of veinSpots(ore, rng, counts.stringer)) {
    write('stringer', spot.section, spot.side, { strike: turn(ore.vein.strike + rng.normal(12, 6)), dip: Math.min(88, ore.vein.dip + rng.normal(10, 5)) }, {})
  }
}

/** How far along a working a function of the ground first changes sign. */
function crossing({ ore }: Making, name: string, f: (p: Enu) => number): number {
  const { path } = ore.workings.find(w => w.name === name)!
  let before = Number.NaN
  for (let at = 0; at < path.length; at += 0.05) {
    const value = f(path.at(at).point)
    if (value * before <= 0) return at
    before = value
  }
  return path.length / 2
}
