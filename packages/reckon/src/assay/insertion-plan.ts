import { InputError } from '../core/index.ts'

/** A bag to be sent, and what it is thought to run; g/t, any guess will do. */
export interface BagToSend { readonly bag: string, readonly expected: number }

export interface InsertedPlace {
  readonly what: 'bag' | 'blank' | 'standard' | 'duplicate'
  /** The bag; for a duplicate the one that is split again; '' for a blank or a standard. */
  readonly bag: string
  /** For a standard, which one: the place in the list of standards given. */
  readonly standard?: number
  readonly why: string
}

export interface InsertionPlan {
  readonly places: readonly InsertedPlace[]
  readonly blanks: number
  readonly standards: number
  readonly duplicates: number
}

/**
 * One standard and one duplicate in so many bags, and a blank at the head, after each of the richest, and no more than so many bags apart.
 * Common practice, no source.
 */
const every = { standard: 10, duplicate: 15, blank: 15 } as const
/** The share of bags after which a blank is worth most: the richest. */
const richestShare = 0.1

/**
 * Where blanks, standards and second splits go in the next batch.
 *
 * A blank tells most right after rich rock, where carried-over gold would show; a standard tells most when no long stretch is without one;
 * a second split of a rich and of a middling bag tells the precision where it counts.
 * @param bags  in the order in which they will be run
 * @param standards  how many different ones there are, richest first; they take turns
 * @throws InputError
 */
export function insertionPlan(bags: readonly BagToSend[], standards: number): InsertionPlan {
  if (!(Number.isInteger(standards) && standards >= 0)) throw new InputError('standards', standards, 'a whole number, zero or more')
  bags.forEach(({ expected }, i) => { if (!(expected >= 0 && Number.isFinite(expected))) throw new InputError(`bags[${i}].expected`, expected, 'zero or more') })
  if (bags.length === 0) return { places: [], blanks: 0, standards: 0, duplicates: 0 }
  const byGrade = [...bags.keys()].sort((a, b) => bags[b]!.expected - bags[a]!.expected || a - b)
  const rich = new Set(byGrade.slice(0, Math.max(1, Math.round(bags.length * richestShare))))
  const doubles = Math.max(1, Math.round(bags.length / every.duplicate))
  // From the richest half, evenly through it.
  const twice = new Set(Array.from({ length: doubles }, (_, i) => byGrade[Math.floor((i + 0.5) * Math.ceil(bags.length / 2) / doubles)]!))
  const wanted = standards === 0 ? 0 : Math.max(1, Math.round(bags.length / every.standard))
  const standardAfter = new Map(Array.from({ length: wanted }, (_, i) => [Math.floor((i + 0.5) * bags.length / wanted), i % standards]))
  const places: InsertedPlace[] = [{ what: 'blank', bag: '', why: 'first: what the laboratory ran before is not ours' }]
  let sinceBlank = 0
  bags.forEach(({ bag }, i) => {
    places.push({ what: 'bag', bag, why: '' })
    sinceBlank++
    if (rich.has(i)) { places.push({ what: 'blank', bag: '', why: `right after ${bag}, thought to be rich: gold that is carried over would show` }); sinceBlank = 0 }
    if (twice.has(i)) places.push({ what: 'duplicate', bag, why: `${bag} split again under another number: how far two splits part` })
    const standard = standardAfter.get(i)
    if (standard !== undefined) places.push({ what: 'standard', bag: '', standard, why: 'so that no long stretch is without one' })
    if (sinceBlank >= every.blank) { places.push({ what: 'blank', bag: '', why: `${every.blank} bags since the last` }); sinceBlank = 0 }
  })
  const count = (what: InsertedPlace['what']) => places.filter(p => p.what === what).length
  return { places, blanks: count('blank'), standards: count('standard'), duplicates: count('duplicate') }
}
