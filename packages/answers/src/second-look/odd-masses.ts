import type { Entry } from '@lodebook/book'
import { entryTitle } from '../entry-title.ts'
import { quantityOf, textOf, valueOf } from '../read.ts'
import { figure } from '../words.ts'
import { median } from './second-look.ts'
import type { SecondLook } from './second-look.ts'

/** Bags of one method within a factor of eight of their middle are usual: hands, hammers and rock differ. Common practice, no source. */
const factor = 8

/** Sample masses far from what bags of the same method weigh: a pound for a kilogram hides, a gram for a kilogram shows. */
export function oddMasses(samples: readonly Entry[]): readonly SecondLook[] {
  const byMethod = new Map<string, { entry: Entry, mass: number }[]>()
  for (const entry of samples) {
    const mass = valueOf(entry, 'mass') ?? valueOf(entry, 'massWet')
    if (mass === undefined) continue
    const method = textOf(entry, 'method') ?? ''
    byMethod.set(method, [...byMethod.get(method) ?? [], { entry, mass }])
  }
  return [...byMethod].flatMap(([method, bags]) => {
    if (bags.length < 5) return []
    const middle = median(bags.map(b => b.mass))
    return bags.filter(b => b.mass > factor * middle || b.mass < middle / factor).map(({ entry, mass }): SecondLook => ({
      sort: 'mass', entries: [entry.id], times: Math.abs(Math.log(mass / middle)) / Math.log(factor),
      sentence: `${entryTitle(entry)} weighs ${(quantityOf(entry, 'mass') ?? quantityOf(entry, 'massWet'))!.text}; other ${method} samples weigh about ${figure(middle / 1000, 2)} kg.`,
      todo: 'Weigh it again, or see which unit the scale showed.',
    }))
  })
}
