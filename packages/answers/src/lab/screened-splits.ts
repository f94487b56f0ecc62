import type { Entry } from '@lodebook/book'
import { screenAssay } from '@lodebook/reckon/assay'
import type { Assume } from '../assumptions.ts'
import { textOf, valueOf } from '../read.ts'
import { bagOf } from './looks.ts'
import type { Look } from './looks.ts'

export interface ScreenedSplits {
  /** By the bag that was screened. */
  readonly looks: readonly { readonly bag: string, readonly look: Look }[]
  /** Assays that are taken up in them and must not count again. */
  readonly used: ReadonlySet<string>
}

/** Bags whose screen plus and screen minus were split off, weighed and assayed apart: one look at the whole, not two at its parts. */
export function screenedSplits(splits: readonly Entry[], assays: readonly Entry[], grain: number, assume: Assume): ScreenedSplits {
  const of = (method: string) => splits.filter(s => textOf(s, 'method') === method && valueOf(s, 'mass') !== undefined)
  const assayed = (split: Entry) => assays.filter(a => bagOf(a) === bagOf(split) && valueOf(a, 'gold') !== undefined)
  const used = new Set<string>()
  const looks = of('screen plus').flatMap((plus) => {
    const bag = textOf(plus, 'of')!, minus = of('screen minus').find(s => textOf(s, 'of') === bag)
    const coarse = assayed(plus), fine = minus ? assayed(minus) : []
    if (!minus || coarse.length === 0 || fine.length === 0) return []
    for (const a of [...coarse, ...fine]) used.add(a.id)
    const masses = [plus, minus].map(s => valueOf(s, 'mass')!) as [number, number]
    const grade = screenAssay({
      plus: { mass: masses[0], grade: coarse.reduce((sum, a) => sum + valueOf(a, 'gold')!, 0) / coarse.length },
      minus: { mass: masses[1], grades: fine.map(a => valueOf(a, 'gold')!) },
    })
    const look: Look = {
      entry: coarse[0]!, also: [plus, minus, ...coarse.slice(1), ...fine], says: `screened apart, ${Math.round(masses[0] + masses[1])} g`,
      look: { mass: masses[0] + masses[1], grain, recovery: 1, relativeSd: assume('assay precision').value, found: { grade } },
    }
    return [{ bag, look }]
  })
  return { looks, used }
}
