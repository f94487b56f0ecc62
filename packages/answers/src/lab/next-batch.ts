import type { Entry } from '@lodebook/book'
import { insertionPlan } from '@lodebook/reckon/assay'
import type { Belief } from '../belief.ts'
import { textOf, valueOf } from '../read.ts'
import { plural } from '../words.ts'
import { bagOf } from './looks.ts'
import type { NextBatch } from './shapes.ts'

/** What gold seen in a sample is worth as a first guess, in times the middle of the others. Common practice, no source. */
const seenTimes: Readonly<Record<string, number>> = { none: 1, 'one speck': 3, 'a few specks': 8, much: 20 }

export interface ToSend {
  readonly samples: readonly Entry[]
  readonly splits: readonly Entry[]
  readonly assays: readonly Entry[]
  readonly standards: readonly Entry[]
  readonly beliefs: ReadonlyMap<string, Belief>
  readonly root: (bag: string) => string
}

/** The order in which bags not yet assayed should go to the laboratory, with blanks, standards and second splits among them. */
export function nextBatch({ samples, splits, assays, standards, beliefs, root }: ToSend): NextBatch {
  const done = new Set(assays.flatMap(a => [bagOf(a), root(bagOf(a))]))
  const kept = splits.filter(s => textOf(s, 'purpose') === 'assay' && !done.has(bagOf(s)))
  const taken = new Set(kept.map(s => root(bagOf(s))))
  const ordinary = samples.filter(s => !['blank', 'standard'].includes(textOf(s, 'role') ?? '') && !done.has(bagOf(s)) && !taken.has(bagOf(s)))
  const grades = [...beliefs.values()].map(b => b.grade).sort((a, b) => a - b), middle = grades[Math.floor(grades.length / 2)] ?? 1
  const expected = (bag: string) => {
    const sample = samples.find(s => bagOf(s) === root(bag))
    return beliefs.get(root(bag))?.grade ?? middle * (seenTimes[(sample && textOf(sample, 'visibleGold')) ?? 'none'] ?? 1)
  }
  const bags = [...kept, ...ordinary].map(e => bagOf(e)).map(bag => ({ bag, expected: expected(bag) }))
  const named = standards.filter(s => textOf(s, 'sort') === 'standard' && valueOf(s, 'gold') !== undefined).sort((a, b) => valueOf(b, 'gold')! - valueOf(a, 'gold')!)
  const blank = standards.find(s => textOf(s, 'sort') === 'blank')
  const plan = insertionPlan(bags, named.length)
  const places = plan.places.map(p => ({
    what: p.what, why: p.why,
    name: p.what === 'blank' ? `blank${blank ? `, ${textOf(blank, 'name')!}` : ''}` : p.what === 'standard' ? textOf(named[p.standard!]!, 'name')! : p.what === 'duplicate' ? `second split of ${p.bag}` : p.bag,
  }))
  const lacking = [...(blank ? [] : ['a blank: barren rock crushed as the samples are']), ...(named.length > 0 ? [] : ['a certified standard near the grade that decides'])]
  return {
    places,
    sentence: bags.length === 0 ? 'Every bag has been assayed; nothing waits for the laboratory.'
      : `${plural(bags.length, 'bag')} not assayed yet: send them in this order with ${plural(plan.blanks, 'blank')}, ${plural(plan.standards, 'standard')} and ${plural(plan.duplicates, 'second split')} among them, under numbers that do not give them away.${lacking.length > 0 ? ` The book has no ${lacking.join(', and no ')}.` : ''}`,
  }
}
