import type { BagTruth, Making } from '../making.ts'
import type { Random } from '../random.ts'
import { goldIn, grainClasses, lessGrains, panRecovery, splitGrains, type Grains } from '../truth/grains.ts'
import { bagMass, goldMass } from '../write/as-written.ts'
import { dayText, timeOn } from '../write/clock.ts'
import { ives, moss } from '../write/crew.ts'
import { tools } from './tools.ts'

/** A split sent to the laboratory: the bag it came from and what is truly in it. */
export interface Split { readonly bag: string, readonly of: string, readonly grams: number, readonly grains: Grains }

const days = ['2026-07-13', '2026-07-14', '2026-07-15', '2026-07-16', '2026-07-17', '2026-07-20', '2026-07-21', '2026-07-22']
/** Grains of gold salted into a clean pan to learn what the panner keeps, in so many pans. */
const seeding = { pans: 4, grains: 20 }

/**
 * Crushes every bag, takes a split from those that go to the laboratory, and pans the rest. Two bags change places on the table when the
 * crew is careless. Returns the splits.
 */
export function crushAndPan(making: Making, forAssay: ReadonlySet<string>): Split[] {
  const { diary } = making, rng = making.numbers('lab'), contents = new Map([...making.bags.values()].map(bag => [bag.bag, bag] as const))
  if (making.careless) swapTwo(making, contents, forAssay)
  const weights = grainClasses.map(g => Number((g.mgEach * rng.lognormal(1, 0.08)).toPrecision(2)))
  const all = [...making.bags.keys()], splits: Split[] = []
  all.forEach((bag, i) => {
    const inside = contents.get(bag)!, at = timeOn(days[Math.floor(i * days.length / all.length)]!, 8, 50 * (i % Math.ceil(all.length / days.length)))
    let { grams, grains } = inside
    if (forAssay.has(bag)) {
      const taken = Math.min(0.25 * grams, rng.uniform(190, 260)), part = splitGrains(rng, grains, taken / grams), name = `${bag}A`
      diary.write(moss, at, 'split', { bag: name, of: bag, method: 'cone and quarter', mass: `${Math.round(taken)} g`, mesh: '1/16 in', purpose: 'assay', made: dayText(at) })
      splits.push({ bag: name, of: bag, grams: taken, grains: part })
      grams -= taken
      grains = lessGrains(grains, part)
    }
    pan(making, rng, { bag, grams, grains, at: at + 20 * 60_000, turn: i, weights, seeded: i % Math.ceil(all.length / seeding.pans) === 2 })
  })
  return splits
}

interface Panning {
  readonly bag: string
  readonly grams: number
  readonly grains: Grains
  readonly at: number
  readonly turn: number
  /** What the crew takes one grain of each class to weigh, milligrams. */
  readonly weights: readonly number[]
  readonly seeded: boolean
}

function pan({ diary }: Making, rng: Random, p: Panning): void {
  const kept = p.grains.map((n, i) => rng.binomial(n, grainClasses[i]!.kept)), mg = goldIn(kept), person = p.turn % 3 === 1 ? ives : moss
  const counted = kept.map((n, i) => tally(rng.binomial(n, grainClasses[i]!.counted)))
  const colours = counted.flatMap((n, i) => n === 0 ? [] : [`${n} ${grainClasses[i]!.class} at ${p.weights[i]!} mg`])
  const weighed = Math.max(0, mg + rng.normal(0, tools.goldScale))
  diary.write(person, p.at, 'pan', {
    bag: p.bag, mass: bagMass(person, p.grams * (1 + rng.normal(0, tools.bagScale)), p.turn), mesh: '1/16 in', colours: colours.length === 0 ? 'none' : colours.join('; '),
    goldMass: mg === 0 ? 'nil' : weighed < 2 ? 'tr' : goldMass(weighed, p.turn), tails: rng.pick(['kept', 'kept', 're-panned', 'thrown']), sulphides: rng.pick(['none', 'few', 'few', 'many']),
    ...(p.seeded ? { seeded: `${seeding.grains}`, found: `${rng.binomial(seeding.grains, panRecovery)}` } : {}),
    panner: person.name, panned: dayText(p.at), note: p.seeded ? 'Salted with counted grains of mixed sizes, taken out again before weighing.' : undefined,
  })
}

/** Nobody counts two hundred specks one by one. */
const tally = (n: number): number => n < 40 ? n : n < 150 ? Math.round(n / 5) * 5 : Math.round(n / 25) * 25

/** A rich bag and a poor one, both for the laboratory, get each other's contents. */
function swapTwo(making: Making, contents: Map<string, BagTruth>, forAssay: ReadonlySet<string>): void {
  const candidates = [...making.bags.values()].filter(b => b.method === 'channel' && b.role === 'ordinary' && forAssay.has(b.bag) && !duplicated(making, b.bag)).sort((a, b) => a.grade - b.grade)
  const poor = candidates[Math.floor(candidates.length * 0.15)], rich = candidates[Math.floor(candidates.length * 0.85)]
  if (poor === undefined || rich === undefined || poor === rich) return
  contents.set(poor.bag, rich)
  contents.set(rich.bag, poor)
  making.mistakes.push({ sort: 'bags swapped', entries: [poor.entry, rich.entry],
    sentence: `Bags ${poor.bag} and ${rich.bag} changed places on the crushing table: the pan and the assay of each belong to the other.` })
}

const duplicated = ({ diary }: Making, bag: string): boolean => diary.notes.some(note => note.draft.set.duplicateOf === bag)
