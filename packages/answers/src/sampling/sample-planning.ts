import type { Entry } from '@lodebook/book'
import { grainSize } from '@lodebook/reckon/sampling'
import type { Assume } from '../assumptions.ts'
import type { Belief } from '../belief.ts'
import { quantile } from '../build-answer.ts'
import { coloursOf, textOf, valueOf } from '../read.ts'
import type { CrewUnits } from '../words.ts'
import { plural } from '../words.ts'
import { planFor } from './plan-for.ts'
import type { PlanWish, SamplePlanning } from './shapes.ts'

export interface SamplingInput {
  readonly samples: readonly Entry[]
  readonly pans: readonly Entry[]
  readonly beliefs: ReadonlyMap<string, Belief>
  readonly assume: Assume
  readonly units: CrewUnits
}

/** What a pan or a mortar takes in the end: two kilograms at half a millimetre. Common practice, no source. */
const finalMass = 2000
const finalSize = 0.0005
/** Fewer bags than this say little of what grade to expect. */
const fewestBags = 5

const middle = (values: readonly number[]): number => quantile([...values].sort((a, b) => a - b), 0.5)

interface Told { readonly value: number, readonly from: string }

/** How much to take, and how, for what the book says of the crew's material; the standing assumptions where it says nothing. */
export function samplePlanning({ samples, pans, beliefs, assume, units }: SamplingInput): SamplePlanning {
  const given = { grade: assume('grade expected'), grain: assume('largest gold grain'), fragment: assume('coarsest piece'), precision: assume('sampling precision wanted') }
  const grades = [...beliefs.values()].map(b => b.grade)
  const grade: Told = grades.length >= fewestBags ? { value: middle(grades), from: `middle of ${plural(grades.length, 'bag')} panned or assayed` } : { value: given.grade.value, from: given.grade.why }
  const grain = largestGrain(samples, pans) ?? { value: given.grain.value / 1000, from: given.grain.why }
  const pieces = samples.filter(s => textOf(s, 'method') !== 'piece').flatMap(s => valueOf(s, 'coarsest') ?? [])
  const fragment: Told = pieces.length > 0 ? { value: middle(pieces), from: `middle of ${plural(pieces.length, 'bag')}` } : { value: given.fragment.value / 1000, from: given.fragment.why }
  const wish: PlanWish = { grade: grade.value, grain: grain.value, fragment: fragment.value, precision: given.precision.value, finalMass, finalSize, cut: true }
  const assumed = [given.precision, ...grades.length < fewestBags ? [given.grade] : [], ...pieces.length === 0 ? [given.fragment] : []]
  return {
    ...planFor(wish, units, assumed), wish,
    whence: {
      grade: grade.from, grain: grain.from, fragment: fragment.from, precision: given.precision.why, finalMass: 'a full pan or two; common practice, no source',
      finalSize: 'as fine as a mortar brings it; common practice, no source', cut: 'a channel or chips across the vein',
    },
  }
}

/** The largest gold that was seen in a bag or a pan. Pieces that the detector picked are left out: they were picked for it. */
function largestGrain(samples: readonly Entry[], pans: readonly Entry[]): Told | undefined {
  const seen = samples.filter(s => textOf(s, 'method') !== 'piece').flatMap(s => valueOf(s, 'largestGold') ?? []).filter(size => size > 0)
  if (seen.length > 0) return { value: Math.max(...seen), from: `largest grain seen in ${plural(seen.length, 'bag')}` }
  const masses = pans.flatMap(coloursOf).filter(c => c.count > 0).map(c => c.mgEach)
  return masses.length === 0 ? undefined : { value: grainSize(Math.max(...masses)) / 1000, from: `largest class of colours in the pans, ${Math.max(...masses)} mg, as a ball` }
}
