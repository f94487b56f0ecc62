import type { Entry } from '@lodebook/book'
import { numberOf, quantityOf, textOf, valueOf } from '../read.ts'
import { bagOf } from './looks.ts'

/** One assay at its place in a laboratory's batch, with the sample that its bag is. */
export interface Run {
  readonly assay: Entry
  readonly bag: string
  readonly sample: Entry | undefined
  readonly role: string
  readonly certificate: string
}

/** Where no result under a limit tells what the limit is, g/t: 0.005 oz a short ton, an old reporting step; common practice, no source. */
export const usualLimit = 0.005 * 240 / 7

/** All assays, batch by batch in the order in which they were run; where no place in the batch is written, in the order of the book. */
export function runOrder(samples: readonly Entry[], assays: readonly Entry[], root: (bag: string) => string): readonly Run[] {
  const bags = new Map(samples.map(s => [bagOf(s), s]))
  const batches = [...new Set(assays.map(certificateOf))]
  return assays.map((assay, i) => ({ assay, i })).sort((a, b) => batches.indexOf(certificateOf(a.assay)) - batches.indexOf(certificateOf(b.assay))
    || (numberOf(a.assay, 'sequence') ?? Infinity) - (numberOf(b.assay, 'sequence') ?? Infinity) || a.i - b.i).map(({ assay }) => {
    const bag = bagOf(assay), sample = bags.get(bag) ?? bags.get(root(bag))
    return { assay, bag, sample, role: (sample && textOf(sample, 'role')) ?? 'ordinary', certificate: certificateOf(assay) }
  })
}

export const certificateOf = (assay: Entry): string => textOf(assay, 'certificate') ?? textOf(assay, 'laboratory') ?? ''

/** The laboratory's own limit, g/t: what its results stood below; the usual one where none did. */
export function limitOf(assays: readonly Entry[]): number {
  const limits = assays.flatMap((a) => { const gold = quantityOf(a, 'gold'); return gold?.mark === 'below' && gold.value !== null ? [gold.value] : [] })
  return limits.length > 0 ? Math.max(...limits) : usualLimit
}

/** A grade to plot: the figure, or the limit it stood below. */
export function shownGrade(assay: Entry): { readonly value: number, readonly below: boolean } | undefined {
  const gold = quantityOf(assay, 'gold')
  if (!gold) return undefined
  if (gold.mark === 'trace') return { value: usualLimit, below: true }
  return { value: valueOf(assay, 'gold') ?? 0, below: gold.mark === 'below' || gold.mark === 'nil' }
}
