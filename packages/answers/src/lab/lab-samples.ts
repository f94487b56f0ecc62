import type { Entry } from '@lodebook/book'
import type { Belief } from '../belief.ts'
import { textOf } from '../read.ts'
import { bagOf } from './looks.ts'
import type { Look } from './looks.ts'
import type { FailedControl, LabSample, LookAt, SwapSuspicion } from './shapes.ts'

export interface LabSamplesInput {
  readonly samples: readonly Entry[]
  readonly looks: ReadonlyMap<string, readonly Look[]>
  readonly beliefs: ReadonlyMap<string, Belief>
  readonly failed: readonly FailedControl[]
  readonly swaps: readonly SwapSuspicion[]
  readonly root: (bag: string) => string
}

/** Every bag of rock with its looks, its one belief, and what speaks against it; the richest first. */
export function labSamples({ samples, looks, beliefs, failed, swaps, root }: LabSamplesInput): readonly LabSample[] {
  const entries = new Map(samples.map(s => [bagOf(s), s])), role = (bag: string) => textOf(entries.get(bag) ?? { fields: {} } as Entry, 'role') ?? 'ordinary'
  return [...beliefs.values()].filter(b => !['blank', 'standard'].includes(role(b.bag))).map((belief): LabSample => {
    const sample = entries.get(belief.bag), of = sample && textOf(sample, 'duplicateOf')
    return {
      bag: belief.bag, entry: sample?.id, role: role(belief.bag), method: (sample && textOf(sample, 'method')) ?? '', looks: looks.get(belief.bag)!.map(lookAt),
      grade: belief.grade, low: belief.low, high: belief.high, below: belief.below, answer: belief.answer,
      doubles: of === undefined ? samples.filter(s => textOf(s, 'duplicateOf') === belief.bag).map(bagOf) : [of],
      doubts: [
        ...failed.filter(f => f.touched.some(bag => root(bag) === belief.bag)).map(f => `${f.sort} ${f.bag} failed beside it`),
        ...swaps.filter(s => s.bags.includes(belief.bag)).map(s => `may be changed over with ${s.bags.find(b => b !== belief.bag)!}`),
      ],
    }
  }).sort((a, b) => b.grade - a.grade)
}

function lookAt({ entry, look, says }: Look): LookAt {
  const { found } = look, mark = 'below' in found ? 'below' as const : 'above' in found ? 'above' as const : undefined
  const grade = 'below' in found ? found.below : 'above' in found ? found.above : found.grade
  return { entry: entry.id, kind: entry.kind === 'pan' ? 'pan' : 'assay', says, bag: bagOf(entry), grade: grade / look.recovery, mark }
}
