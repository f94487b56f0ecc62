import type { Posting } from '@lodebook/book'
import { makeMaking, type BagTruth, type LooseEnds, type Mistake, type Spot } from './making.ts'
import { gob } from './measure/gob.ts'
import { plantRecovery, rates } from './measure/shifts.ts'
import { season } from './season.ts'
import { grainClasses, panRecovery } from './truth/grains.ts'
import { makeOre, type Ore } from './truth/ore.ts'
import { makeDiary, type Note } from './write/diary.ts'
import { posted, unsealed } from './write/posted.ts'

export interface DemoOptions {
  /** How many samples, blanks and standards and duplicates among them; 70 unless said, 9 at least. Pieces that the detector rang on come on top. */
  readonly samples?: number
  /** Whether the crew makes its five mistakes; true unless said. */
  readonly mistakes?: boolean
}

/** What is so, and what the crew does not know. For tests only: no answer may see it. */
export interface Truth extends Ore {
  readonly seed: number
  readonly mistakes: readonly Mistake[]
  /** Bag numbers that can't be accounted for. */
  readonly loose: Readonly<LooseEnds>
  /** Where each entry with a place really is, by entry id. */
  readonly spots: ReadonlyMap<string, Spot>
  /** What each bag of rock really holds, by bag number. */
  readonly bags: ReadonlyMap<string, BagTruth>
  readonly grains: typeof grainClasses
  readonly panRecovery: number
  readonly plantRecovery: number
  /** Tonnes a person-hour. */
  readonly rates: typeof rates
  readonly gob: typeof gob
  /** What there really was to dig away, by the digging job's name, m³ in place. */
  readonly dug: ReadonlyMap<string, number>
}

export interface Demo {
  readonly truth: Truth
  /** What the crew wrote, before it is chained: cheap. */
  readonly notes: readonly Note[]
  /** The same as postings of three devices, in the order of time; made when first asked for. */
  readonly postings: readonly Posting[]
  /** Postings that fold to the same entries but carry no real hash: quick, for tests over many seeds only. */
  readonly unsealed: readonly Posting[]
}

/**
 * Makes the invented mine, and the book that its crew keeps from April to October 2026. Pure: the same seed gives the same bytes.
 * @param seed  a whole number; the stated things (the vein's plane, the workings' plan, the crew) are the same for all seeds
 */
export function makeDemo(seed: number, options: DemoOptions = {}): Demo {
  const ore = makeOre(seed), diary = makeDiary(), making = makeMaking(seed, ore, diary, options.mistakes ?? true)
  season(making, options.samples ?? 70)
  let postings: readonly Posting[] | undefined
  return {
    truth: {
      ...ore, seed, mistakes: making.mistakes, loose: making.loose, spots: making.spots, bags: making.bags,
      grains: grainClasses, panRecovery, plantRecovery, rates, gob, dug: making.dug,
    },
    notes: diary.notes,
    get postings() { return postings ??= posted(diary.notes) },
    get unsealed() { return unsealed(diary.notes) },
  }
}
