import type { Enu, VeinPoint } from '@lodebook/reckon'
import type { Making } from '../making.ts'
import type { Random } from '../random.ts'
import { onSection, sectionAt, type Section } from '../truth/section.ts'
import { centimetres, goldMass } from '../write/as-written.ts'
import { dayText, timeOn } from '../write/clock.ts'
import { ives, wren } from '../write/crew.ts'
import { placeWords } from './place-words.ts'
import { veinSpots } from './vein-spots.ts'

const days = ['2026-06-08', '2026-06-10', '2026-06-12', '2026-06-15', '2026-06-17', '2026-06-19']
/** 150 signals in all: on the vein, in stacked waste, in the other workings, outside. */
const counts = { vein: 88, gob: 22, elsewhere: 26, outside: 14 }

interface Signal { readonly place: string, readonly point?: Enu, readonly vein?: VeinPoint, readonly gold: number, readonly iron: number }

/** Detector signals. Where the ground is richer they are stronger and more of them are gold; iron and hot rock sing too. */
export function targets(making: Making): void {
  const { diary } = making, rng = making.numbers('targets')
  const all = [...onVein(making, rng), ...inGob(making, rng), ...elsewhere(making, rng), ...outside(rng)]
  all.forEach((signal, i) => {
    const person = i % 2 === 0 ? ives : wren, at = timeOn(days[Math.floor(i / 25)]!, 9, 13 * (i % 25))
    const sort = rng.weighted([['gold', signal.gold], ['iron', signal.iron], ['hot rock', 0.25], ['other metal', 0.08]] as const)
    const opened = rng.chance(signal.vein === undefined ? 0.75 : 0.45), mg = rng.lognormal(35, 0.9)
    const outcome = sort === 'gold' ? (opened ? 'gold' : 'still in the wall') : !opened ? rng.pick(['still in the wall', 'open']) : sort === 'iron' ? (rng.chance(0.15) ? 'relic' : 'scrap iron') : sort
    const strength = Math.max(0, Math.min(10, Math.round((sort === 'gold' ? 3.2 + 1.3 * Math.log(signal.gold / 0.2) : sort === 'iron' ? 6 : 3) + rng.normal(0, 1.2))))
    const entry = diary.write(person, at, 'target', {
      mark: `T${i + 1}`, place: signal.place, instrument: 'VLF detector', coil: i % 3 === 0 ? 'small elliptical' : 'round', setting: 'all metal',
      strength: `${strength}`, character: sort === 'gold' ? rng.pick(['sharp', 'sharp', 'faint', 'double']) : sort === 'iron' ? rng.pick(['iron-like', 'broken', 'double']) : rng.pick(['broad', 'faint']),
      depth: centimetres(rng.uniform(0.01, 0.16)), outcome, goldMass: outcome === 'gold' ? goldMass(Math.max(3, mg), i) : undefined,
      materials: signal.vein === undefined ? undefined : rng.pick(['quartz', 'quartz, iron-stained', 'gouge']), found: dayText(at),
    })
    if (signal.point !== undefined) making.spots.set(entry, { point: signal.point, ...signal.vein === undefined ? {} : { vein: signal.vein } })
  })
}

/** Places on the vein, the richer the likelier; `gold` weighs how likely a signal there is gold. */
function onVein({ ore }: Making, rng: Random): Signal[] {
  const spots = veinSpots(ore, rng, 4 * counts.vein).map(spot => ({ spot, rich: ore.grade(spot.vein) / (ore.grade(spot.vein) + 8) }))
  const chosen = new Set<typeof spots[number]>()
  while (chosen.size < counts.vein) chosen.add(rng.weighted(spots.map(s => [s, chosen.has(s) ? 0 : 0.15 + s.rich] as const)))
  return spots.filter(s => chosen.has(s)).map(({ spot, rich }, i) => ({
    place: placeWords(rng, i % 2 === 0 ? ives : wren, spot.section, spot.side, spot.side === 'back' ? undefined : spot.height), point: spot.point, vein: spot.vein, gold: 0.1 + rich, iron: 0.15,
  }))
}

function inGob({ ore }: Making, rng: Random): Signal[] {
  return Array.from({ length: counts.gob }, () => {
    const corner = rng.pick(ore.stopeCorners.slice(0, 3))
    return { place: `${corner}, sill`, point: ore.stations.get(corner)!.point, gold: 0.25, iron: 0.4 }
  })
}

function elsewhere(making: Making, rng: Random): Signal[] {
  const { ore } = making, workings = ore.workings.filter(w => !w.onVein && (w.sort === 'adit' || w.sort === 'crosscut'))
  return Array.from({ length: counts.elsewhere }, (_, i) => {
    const working = rng.pick(workings), section: Section = sectionAt(ore.stations, working, rng.uniform(0.3, working.path.length - 0.3))
    const side = rng.pick(['sill', 'sill', 'left rib', 'right rib'])
    return { place: placeWords(rng, i % 2 === 0 ? ives : wren, section, side), point: onSection(section, 0, 0), gold: 0.02, iron: 0.7 }
  })
}

const outside = (rng: Random): Signal[] => Array.from({ length: counts.outside }, (_, i) =>
  ({ place: `words: ${rng.pick(['top', 'side', 'toe'])} of the dump, flag ${i + 1}`, gold: 0.06, iron: 0.6 }))
