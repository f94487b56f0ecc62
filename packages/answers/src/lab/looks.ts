import type { Entry } from '@lodebook/book'
import type { GoldLook } from '@lodebook/reckon/assay'
import type { Assume } from '../assumptions.ts'
import { coloursOf, numberOf, quantityOf, textOf, valueOf } from '../read.ts'

/** A look at a sample's gold with the entry it was written in and how it reads. */
export interface Look { readonly entry: Entry, readonly look: GoldLook, readonly says: string }

/** An assay charge when none is written, g: one assay ton. */
const usualCharge = 29.2
/** Where a laboratory says trace and nothing else, it saw less than this: 0.005 oz a short ton, an old reporting step; common practice, no source. */
const traceLimit = 0.005 * 240 / 7
/** How well the mass of one colour of a class is known, relative. Common practice, no source. */
const colourSd = 0.3
/** Weighing a few specks on a jeweller's scale, mg. Common practice, no source. */
const weighingSd = 1

/** Mass-weighted mean mass of the grains seen in all pans, mg; undefined below so many grains. */
export function grainFrom(pans: readonly Entry[], fewestGrains = 10): number | undefined {
  const all = pans.flatMap(coloursOf)
  const count = all.reduce((sum, c) => sum + c.count, 0)
  const mass = all.reduce((sum, c) => sum + c.count * c.mgEach, 0)
  return count < fewestGrains || mass === 0 ? undefined : all.reduce((sum, c) => sum + c.count * c.mgEach ** 2, 0) / mass
}

/** An assay as a look; undefined when it says nothing at all. */
export function assayLook(assay: Entry, grain: number, assume: Assume): Look | undefined {
  const gold = quantityOf(assay, 'gold')
  if (!gold) return undefined
  const found = gold.mark === 'trace' ? { below: traceLimit } : gold.mark === 'below' ? { below: gold.value ?? traceLimit }
    : gold.mark === 'above' ? { above: gold.value ?? 0 } : { grade: gold.value ?? 0 }
  return {
    entry: assay, says: `assay ${gold.text}`,
    look: { mass: valueOf(assay, 'charge') ?? usualCharge, grain, recovery: 1, relativeSd: assume('assay precision').value, found },
  }
}

/** Share of seeded grains that pans find, all pans together, with a relative doubt; the standing figure until any were seeded. */
export function panRecovery(pans: readonly Entry[], assume: Assume): { readonly share: number, readonly relativeSd: number, readonly from: readonly string[] } {
  const seeded = pans.filter(p => (numberOf(p, 'seeded') ?? 0) > 0)
  const put = seeded.reduce((sum, p) => sum + numberOf(p, 'seeded')!, 0)
  const got = seeded.reduce((sum, p) => sum + Math.min(numberOf(p, 'found') ?? 0, numberOf(p, 'seeded')!), 0)
  const given = assume('pan recovery')
  if (put === 0) return { share: given.value, relativeSd: (given.high - given.low) / (2 * 1.2816) / given.value, from: given.entry ? [given.entry] : [] }
  // Jeffreys' middle of a binomial share.
  const share = (got + 0.5) / (put + 1)
  return { share, relativeSd: Math.sqrt(share * (1 - share) / (put + 2)) / share, from: seeded.map(p => p.id) }
}

/** A pan as a look: what was weighed, or else what the colours come to, or that nothing was seen. Undefined when it says neither. */
export function panLook(pan: Entry, grain: number, recovery: { share: number, relativeSd: number }): Look | undefined {
  const mass = valueOf(pan, 'mass')
  if (mass === undefined) return undefined
  const colours = coloursOf(pan)
  const counted = colours.reduce((sum, c) => sum + c.count * c.mgEach, 0)
  const weighed = quantityOf(pan, 'goldMass')
  const seen = colours.reduce((sum, c) => sum + c.count, 0)
  const own = counted > 0 ? colours.reduce((sum, c) => sum + c.count * c.mgEach ** 2, 0) / counted : grain
  const usable = weighed?.value != null && weighed.value > 0 && weighed.mark !== 'below'
  if (!usable && colours.length === 0 && weighed?.mark !== 'nil' && weighed?.mark !== 'below' && weighed?.value !== 0) return undefined
  const mg = usable ? weighed.value * 1000 : counted
  const doubt = usable ? weighingSd / Math.max(mg, weighingSd) : seen > 0 ? colourSd / Math.sqrt(Math.max(1, colours.filter(c => c.count > 0).length)) : 0
  return {
    entry: pan,
    says: `${usable ? `${weighed.text} weighed` : seen === 0 ? 'nothing seen' : `${seen} colours`} in ${quantityOf(pan, 'mass')!.text}`,
    look: {
      mass, grain: mg > 0 ? own : grain, recovery: recovery.share, relativeSd: Math.hypot(recovery.relativeSd, doubt),
      found: { grade: mg * 1000 / mass },
    },
  }
}

export const bagOf = (entry: Entry): string => textOf(entry, 'bag') ?? ''
