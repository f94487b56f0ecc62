import { dateSpans } from '@lodebook/reckon/dating'
import { z } from 'zod'
import { reckoning, type Reckoning } from './define.ts'

const item = z.strictObject({ from: z.number(), to: z.number().optional(), weight: z.number().optional() })

export const dating: readonly Reckoning[] = [
  reckoning('date-spans', 'what dated finds say together about when a place was worked',
    z.strictObject({ items: z.array(item).min(1).max(10_000), bins: z.strictObject({ start: z.number(), width: z.number(), count: z.number() }) }),
    { items: [{ from: 1882, to: 1895 }, { from: 1890, to: 1908, weight: 3 }, { from: 1931, to: 1942 }], bins: { start: 1880, width: 10, count: 7 } },
    ({ items, bins }) => {
      const spans = items.map(({ from, to, weight }) => ({ from, ...to === undefined ? {} : { to }, ...weight === undefined ? {} : { weight } }))
      const { counts, sums, outside, notBefore, visits } = dateSpans(spans, bins)
      return { counts, sums, outside, not_before: notBefore, phases: visits }
    }),
]
