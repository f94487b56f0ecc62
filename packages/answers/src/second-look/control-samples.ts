import type { Entry } from '@lodebook/book'
import { entryTitle } from '../entry-title.ts'
import { numberOf, quantityOf, textOf, valueOf } from '../read.ts'
import { figure } from '../words.ts'
import type { SecondLook } from './second-look.ts'

/** A blank may show so many times the laboratory's own limit. Common practice runs from 5 to 10; no source. */
const blankTimes = 5
/** Where no result under a limit tells what the limit is, g/t: 0.005 oz a short ton, an old reporting step; common practice, no source. */
const usualLimit = 0.005 * 240 / 7

interface Controls { readonly samples: readonly Entry[], readonly assays: readonly Entry[], readonly standards: readonly Entry[] }

/** Blanks that carry gold, with the sample run before them; standards more than three standard deviations from their certificate. */
export function oddControls({ samples, assays, standards }: Controls): readonly SecondLook[] {
  const bags = new Map(samples.map(s => [textOf(s, 'bag'), s]))
  const named = new Map(standards.map(s => [textOf(s, 'name'), s]))
  const limits = assays.flatMap(a => quantityOf(a, 'gold')?.mark === 'below' ? [quantityOf(a, 'gold')!.value ?? usualLimit] : [])
  const limit = limits.length > 0 ? Math.max(...limits) : usualLimit
  return assays.flatMap((assay): SecondLook[] => {
    const sample = bags.get(textOf(assay, 'bag'))
    const gold = valueOf(assay, 'gold')
    const role = sample && textOf(sample, 'role')
    if (gold === undefined || quantityOf(assay, 'gold')?.mark === 'below' || !sample) return []
    if (role === 'blank' && gold > blankTimes * limit) {
      const before = runBefore(assay, assays)
      return [{
        sort: 'blank', entries: [assay.id, sample.id, ...(before ? [before.id] : [])], times: gold / limit,
        sentence: `Blank ${textOf(sample, 'bag')!} ran ${quantityOf(assay, 'gold')!.text}, ${figure(gold / limit, 2)} times the laboratory's limit${before ? `; the sample run before it, ${textOf(before, 'bag')!}, ran ${quantityOf(before, 'gold')!.text}` : ''}.`,
        todo: 'Gold was carried over, or bags were changed. Ask the laboratory to run this part of the batch again.',
      }]
    }
    const certified = role === 'standard' ? named.get(textOf(sample, 'standard')) : undefined
    const value = certified && valueOf(certified, 'gold')
    const deviation = certified && valueOf(certified, 'deviation')
    if (value === undefined || deviation === undefined || !(deviation > 0)) return []
    const times = Math.abs(gold - value) / deviation
    return times <= 3 ? [] : [{
      sort: 'standard', entries: [assay.id, sample.id, certified!.id], times,
      sentence: `${entryTitle(certified!)} in bag ${textOf(sample, 'bag')!} ran ${quantityOf(assay, 'gold')!.text}, ${figure(times, 2)} standard deviations from its certificate.`,
      todo: 'Ask the laboratory to run the samples about it again.',
    }]
  })
}

/** The assay with the next lower place in the same certificate's batch. */
function runBefore(assay: Entry, assays: readonly Entry[]): Entry | undefined {
  const at = numberOf(assay, 'sequence')
  if (at === undefined) return undefined
  return assays.filter(a => textOf(a, 'certificate') === textOf(assay, 'certificate') && (numberOf(a, 'sequence') ?? Infinity) < at)
    .sort((a, b) => numberOf(b, 'sequence')! - numberOf(a, 'sequence')!)[0]
}
