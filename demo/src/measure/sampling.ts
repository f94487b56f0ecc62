import type { Making } from '../making.ts'
import type { Random } from '../random.ts'
import type { Exposure } from '../truth/exposure.ts'
import { drawGrains, grainClasses, type Grains } from '../truth/grains.ts'
import { stated } from '../truth/stated.ts'
import { bagMass, centimetres, inclination, smallWidth, strikeText } from '../write/as-written.ts'
import { dayText, timeOn } from '../write/clock.ts'
import { ives, veinName, wren, type Person } from '../write/crew.ts'
import { gob } from './gob.ts'
import { placeWords } from './place-words.ts'
import { tapeAcross } from './tape-across.ts'
import { tools } from './tools.ts'
import { veinSpots } from './vein-spots.ts'

/** How many bags of each sort; together they are all the samples. */
export type SamplePlan = Readonly<Record<'channel' | 'chip' | 'muck' | 'gob' | 'duplicate' | 'blank' | 'standard', number>>

/** Shares the bags out as the usual seventy are: 46 channels, and four of each other sort. */
export function samplePlan(samples: number): SamplePlan {
  const few = Math.round(samples * 4 / 70), each = { chip: few, muck: few, gob: few, duplicate: few, blank: few, standard: few }
  return { channel: samples - 6 * few, ...each }
}

/** Height and depth of the cut of a channel, metres. */
const channel = { high: 0.1, deep: 0.04 }
const days = ['2026-06-29', '2026-07-01', '2026-07-03', '2026-07-06', '2026-07-08']
export const blankName = 'barren quartz', highStandard = 'standard H', lowStandard = 'standard L'

/** Takes the samples: bags with their places, widths and masses. What the gold in each bag really is goes to `making.bags`. */
export function takeSamples(making: Making, plan: SamplePlan): void {
  const rng = making.numbers('samples'), spots = veinSpots(making.ore, making.numbers('sample spots'), plan.channel + plan.chip)
  const total = plan.channel + plan.chip, chips = new Set(Array.from({ length: plan.chip }, (_, i) => Math.floor((i + 0.5) * total / plan.chip)))
  const writer = bags(making, rng, spots.length + plan.duplicate + plan.muck + plan.gob + plan.blank + plan.standard)
  const dupEvery = plan.duplicate === 0 ? Infinity : spots.length / plan.duplicate
  spots.forEach((spot, i) => {
    const bag = writer.wall(spot, chips.has(i) ? 'chip' : 'channel')
    if (Math.floor((i + 0.5) / dupEvery) < Math.floor((i + 1.5) / dupEvery)) writer.wall(spot, 'channel', bag)
  })
  for (let i = 0; i < plan.muck; i++) writer.loose('muck', making.ore.workings.find(w => w.name === 'Left drift')!.stations.at(6 + 2 * (i % 4))!)
  for (let i = 0; i < plan.gob; i++) writer.loose('gob', making.ore.stopeCorners[i % 3]!)
  for (let i = 0; i < plan.blank; i++) writer.check('blank', blankName)
  for (let i = 0; i < plan.standard; i++) writer.check('standard', i % 2 === 0 ? highStandard : lowStandard)
}

function bags(making: Making, rng: Random, count: number) {
  const { ore, diary } = making
  let n = 0, slipDue = making.careless
  const next = () => {
    const i = n++, person: Person = i % 2 === 0 ? wren : ives, per = Math.ceil(count / days.length)
    return { i, bag: `B-${String(n).padStart(3, '0')}`, person, at: timeOn(days[Math.floor(i / per)]!, 9, Math.min(26, 400 / per) * (i % per)) }
  }
  const scale = (grams: number) => grams * (1 + rng.normal(0, tools.bagScale))
  const seal = (i: number) => `S-${4101 + i}`

  return {
    /** A channel or a row of chips across the vein. */
    wall(spot: Exposure, method: 'channel' | 'chip', duplicateOf?: string): string {
      const { i, bag, person, at } = next(), width = ore.width(spot.vein), grade = ore.grade(spot.vein)
      const tape = tapeAcross(rng, ore.vein, spot, 0.75)
      const cut = method === 'channel' ? channel.high * channel.deep : 0.0018
      const grams = width * tape.stretch * cut * stated.density * 1e6 * (1 + rng.normal(0, 0.12))
      const grains = drawGrains(rng, grams, grade * (1 + rng.normal(0, tools.cutting)))
      const taped = width * tape.stretch + rng.normal(0, tools.width), slipped = slipDue && i >= count * 0.28 && duplicateOf === undefined
      if (slipped) slipDue = false
      const wet = scale(grams * (1 + rng.uniform(0.01, 0.04)))
      const entry = diary.write(person, at, 'sample', {
        bag, role: duplicateOf === undefined ? 'ordinary' : 'duplicate', method, duplicateOf, vein: veinName,
        place: placeWords(rng, person, spot.section, spot.side, spot.side === 'back' ? undefined : spot.height),
        width: slipped ? `${(taped / 0.3048).toFixed(2)} m` : smallWidth(person, taped, i), direction: tape.direction,
        trend: tape.trend === undefined ? undefined : strikeText(tape.trend - ore.declination + rng.normal(0, 2)),
        plunge: tape.plunge === undefined ? undefined : inclination(tape.plunge + rng.normal(0, 2)),
        cut: method === 'channel' ? centimetres(channel.deep * (1 + rng.normal(0, 0.15))) : undefined, materials: rng.pick(['quartz', 'quartz, iron-stained', 'quartz, pyrite', 'quartz, gouge']),
        massWet: bagMass(person, wet, i), mass: bagMass(person, Math.min(scale(grams), wet * 0.98), i), coarsest: rng.pick(['1 1/2 in', '2 in', '3 in', '40 mm', '50 mm']),
        visibleGold: seen(rng, grains), seal: seal(i), collector: person.name, taken: dayText(at),
      })
      making.spots.set(entry, { point: spot.point, vein: spot.vein })
      making.bags.set(bag, { bag, entry, method, vein: spot.vein, grade, width, grams, grains, role: duplicateOf === undefined ? 'ordinary' : 'duplicate' })
      if (slipped) {
        making.mistakes.push({ sort: 'unit slip', entries: [entry], right: `${(taped / 0.3048).toFixed(2)} ft`,
          sentence: `The width of bag ${bag} was taped in feet and written as metres.` })
      }
      return bag
    },
    /** Broken rock from a sill, or stacked waste. */
    loose(method: 'muck' | 'gob', station: string): void {
      const { i, bag, person, at } = next(), grade = method === 'gob' ? rng.lognormal(gob.median, gob.logDeviation) : rng.lognormal(6, 0.6)
      const grams = rng.uniform(4000, 7000), grains = drawGrains(rng, grams, grade)
      const entry = diary.write(person, at, 'sample', {
        bag, role: 'ordinary', method, place: `${station}, sill`, vein: veinName, materials: method === 'gob' ? 'schist, quartz' : 'quartz, schist, fines', massWet: bagMass(person, scale(grams * 1.06), i),
        mass: bagMass(person, scale(grams), i), coarsest: '4 in', visibleGold: 'none', seal: seal(i), collector: person.name, taken: dayText(at),
      })
      making.spots.set(entry, { point: ore.stations.get(station)!.point })
      making.bags.set(bag, { bag, entry, method, grade, grams, grains, role: 'ordinary' })
    },
    /** A bag of known stuff that goes to the laboratory among the others. */
    check(role: 'blank' | 'standard', name: string): void {
      const { i, bag, at } = next()
      diary.write(ives, at, 'sample', { bag, role, method: role === 'blank' ? 'grab' : 'pulp', standard: name, mass: role === 'blank' ? '250 g' : '100 g', seal: seal(i), collector: ives.name, taken: dayText(at) })
    },
  }
}

/** What a sharp eye sees on broken faces: mostly the coarse grains. */
function seen(rng: Random, grains: Grains): string {
  const specks = rng.binomial(grains[grainClasses.findIndex(g => g.class === 'coarse')]!, 0.35) + rng.binomial(grains[1]!, 0.04)
  return specks === 0 ? 'none' : specks === 1 ? 'one speck' : specks < 8 ? 'a few specks' : 'much'
}
