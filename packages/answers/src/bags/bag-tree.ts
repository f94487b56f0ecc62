import type { Entry } from '@lodebook/book'
import { panGold } from '../finds/pan-gold.ts'
import { quantityOf, textOf } from '../read.ts'
import { bagKey } from './bag-number.ts'
import type { ByBag } from './bag-way.ts'
import type { BagTree } from './shapes.ts'

const massOf = (entry: Entry): string => quantityOf(entry, 'mass')?.text ?? quantityOf(entry, 'massWet')?.text ?? 'not weighed'

/** A sample with its duplicates, splits, pans and assays, each under what it came from. */
export function treeOf(sample: Entry, duplicates: readonly Entry[], all: ByBag): BagTree {
  const grow = (entry: Entry, is: string, seen: ReadonlySet<string>): BagTree => {
    const bag = textOf(entry, 'bag')!, k = bagKey(bag), inner = new Set([...seen, k])
    const says = entry.kind === 'split' ? [textOf(entry, 'method'), massOf(entry), textOf(entry, 'purpose') && `for ${textOf(entry, 'purpose')!}`].filter(Boolean).join(', ') : `${textOf(entry, 'method') ?? ''}, ${massOf(entry)}`
    return {
      bag, entry: entry.id, is, says,
      of: [
        ...(all.splitsOf.get(k) ?? []).filter(split => !inner.has(bagKey(textOf(split, 'bag')!))).map(split => grow(split, 'split', inner)),
        ...(all.pans.get(k) ?? []).map((pan): BagTree => ({ bag, entry: pan.id, is: 'pan', says: `${quantityOf(pan, 'mass')?.text ?? ''}: ${panGold(pan).says}`, of: [] })),
        ...(all.assays.get(k) ?? []).map((assay): BagTree => ({ bag, entry: assay.id, is: 'assay', says: [quantityOf(assay, 'gold')?.text, textOf(assay, 'laboratory')].filter(Boolean).join(', '), of: [] })),
      ],
    }
  }
  const root = grow(sample, 'sample', new Set())
  return { ...root, of: [...duplicates.map(d => grow(d, 'duplicate', new Set([bagKey(root.bag)]))), ...root.of] }
}

/** Bags that were split or doubled, as trees; a duplicate stands under the bag it doubles. */
export function treesOf(samples: readonly Entry[], all: ByBag): readonly BagTree[] {
  const doubles = new Map<string, Entry[]>()
  for (const sample of samples) {
    const of = textOf(sample, 'duplicateOf')
    if (of !== undefined) doubles.set(bagKey(of), [...doubles.get(bagKey(of)) ?? [], sample])
  }
  const bags = new Set(samples.map(s => bagKey(textOf(s, 'bag')!)))
  return samples.filter((s) => { const of = textOf(s, 'duplicateOf'); return of === undefined || !bags.has(bagKey(of)) })
    .map(s => treeOf(s, doubles.get(bagKey(textOf(s, 'bag')!)) ?? [], all))
    .filter(tree => tree.of.some(t => t.is === 'split' || t.is === 'duplicate'))
}
