import type { Entry } from '@lodebook/book'
import { panCalibration } from '@lodebook/reckon/assay'
import type { PanAndAssay } from '@lodebook/reckon/assay'
import type { Assume } from '../assumptions.ts'
import { numberOf, textOf } from '../read.ts'

/** Share of the gold that pans keep, with a relative doubt and what tells it. */
export interface Recovery {
  readonly share: number
  readonly relativeSd: number
  /** 80 %. */
  readonly low: number
  readonly high: number
  readonly from: readonly string[]
  readonly pairs: number
  readonly seeded: number
  readonly found: number
}

export interface PannedAndAssayed extends PanAndAssay { readonly panner: string, readonly entries: readonly string[] }

export interface Recoveries {
  readonly all: Recovery
  /** Only those who have shown enough to be told apart. */
  readonly of: ReadonlyMap<string, Recovery>
}

/** A panner with fewer bags panned and assayed, and fewer salted grains, is taken to pan as the crew does. */
const ownFrom = { pairs: 15, grains: 40 }

/**
 * How much of the gold the crew's pans keep: from salted grains and from bags that were assayed as well; the standing figure until there are any.
 * @param middle  ln g/t about which the bags lie
 */
export function recoveriesOf(pans: readonly Entry[], pairs: readonly PannedAndAssayed[], middle: number, assume: Assume): Recoveries {
  const all = recoveryOf(pans, pairs, middle, assume)
  const panners = [...new Set(pans.map(pannerOf))].filter(name => name !== '')
  const own = panners.flatMap((name) => {
    const mine = pairs.filter(p => p.panner === name), salted = saltedIn(pans.filter(p => pannerOf(p) === name))
    return panners.length > 1 && (mine.length >= ownFrom.pairs || salted.seeded >= ownFrom.grains)
      ? [[name, recoveryOf(pans.filter(p => pannerOf(p) === name), mine, middle, assume)] as const] : []
  })
  return { all, of: new Map(own) }
}

export const pannerOf = (pan: Entry): string => textOf(pan, 'panner') ?? ''

function saltedIn(pans: readonly Entry[]) {
  const salted = pans.filter(p => (numberOf(p, 'seeded') ?? 0) > 0)
  return {
    from: salted.map(p => p.id), seeded: salted.reduce((sum, p) => sum + numberOf(p, 'seeded')!, 0),
    found: salted.reduce((sum, p) => sum + Math.min(numberOf(p, 'found') ?? 0, numberOf(p, 'seeded')!), 0),
  }
}

function recoveryOf(pans: readonly Entry[], pairs: readonly PannedAndAssayed[], middle: number, assume: Assume): Recovery {
  const { from, seeded, found } = saltedIn(pans)
  const counts = { pairs: pairs.length, seeded, found }
  if (pairs.length + seeded === 0) {
    const given = assume('pan recovery')
    return {
      share: given.value, low: given.low, high: given.high, relativeSd: (given.high - given.low) / (2 * 1.2816) / given.value,
      from: given.entry ? [given.entry] : [], ...counts,
    }
  }
  const { share, low, high, relativeSd } = panCalibration(pairs, { logMean: middle, logSd: 1.5 }, { found, seeded })
  return { share, low, high, relativeSd, from: [...from, ...pairs.flatMap(p => p.entries)], ...counts }
}
