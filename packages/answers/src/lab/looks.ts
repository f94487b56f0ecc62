import type { Entry } from '@lodebook/book'
import { screenAssay } from '@lodebook/reckon/assay'
import type { GoldLook } from '@lodebook/reckon/assay'
import type { Assume } from '../assumptions.ts'
import { coloursOf, quantityOf, textOf, valueOf } from '../read.ts'

/** A look at a sample's gold with the entry it was written in and how it reads. */
export interface Look {
  readonly entry: Entry
  readonly look: GoldLook
  readonly says: string
  /** Other entries that it was put together from: tails panned again, fractions of a screen. */
  readonly also?: readonly Entry[]
}

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

/** The grade that an assay's two screen fractions come to, g/t, with the mass that was screened; undefined where it was not screened. */
export function screenedGrade(assay: Entry): { readonly grade: number, readonly mass: number } | undefined {
  const [plus, plusGold, minus, minusGold] = ['plusMass', 'plusGold', 'minusMass', 'minusGold'].map(field => valueOf(assay, field))
  if (plus === undefined || plusGold === undefined || minus === undefined || minusGold === undefined) return undefined
  const again = valueOf(assay, 'minusAgain')
  const grades = again === undefined ? [minusGold] : [minusGold, again]
  return { grade: screenAssay({ plus: { mass: plus, grade: plusGold }, minus: { mass: minus, grades } }), mass: plus + minus }
}

/** An assay as a look; undefined when it says nothing at all. */
export function assayLook(assay: Entry, grain: number, assume: Assume): Look | undefined {
  const relativeSd = assume('assay precision').value
  const screened = screenedGrade(assay)
  if (screened) {
    return { entry: assay, says: `screen assay of ${Math.round(screened.mass)} g`, look: { mass: screened.mass, grain, recovery: 1, relativeSd, found: { grade: screened.grade } } }
  }
  const gold = quantityOf(assay, 'gold')
  if (!gold) return undefined
  const found = gold.mark === 'trace' ? { below: traceLimit } : gold.mark === 'below' ? { below: gold.value ?? traceLimit }
    : gold.mark === 'above' ? { above: gold.value ?? 0 } : { grade: gold.value ?? 0 }
  return { entry: assay, says: `assay ${gold.text}`, look: { mass: valueOf(assay, 'charge') ?? usualCharge, grain, recovery: 1, relativeSd, found } }
}

/** Assays without those that another took the place of: a result over the limit, once the same bag was run again for a figure. */
export function standingAssays(assays: readonly Entry[]): readonly Entry[] {
  return assays.filter((assay) => {
    const gold = quantityOf(assay, 'gold')
    if (gold?.mark !== 'above') return true
    const over = (other: Entry) => quantityOf(other, 'gold')?.mark === undefined && (valueOf(other, 'gold') ?? 0) >= (gold.value ?? 0)
    return !assays.some(other => other !== assay && bagOf(other) === bagOf(assay) && over(other))
  })
}

/** Pans with the pans of their tails: what the tails still held belongs to the first pan. Tails without a first pan stand alone. */
export function withTails(pans: readonly Entry[]): readonly { readonly pan: Entry, readonly tails: readonly Entry[] }[] {
  const first = pans.filter(p => textOf(p, 'portion') !== 'its tails'), tails = pans.filter(p => textOf(p, 'portion') === 'its tails')
  const last = new Map(first.map(p => [bagOf(p), p]))
  return [
    ...first.map(pan => ({ pan, tails: tails.filter(t => last.get(bagOf(t)) === pan) })),
    ...tails.filter(t => !last.has(bagOf(t))).map(pan => ({ pan, tails: [] })),
  ]
}

/** Gold in a pan: weighed, or else what its colours come to; undefined when it says neither. */
function goldIn(pan: Entry) {
  const colours = coloursOf(pan), counted = colours.reduce((sum, c) => sum + c.count * c.mgEach, 0), seen = colours.reduce((sum, c) => sum + c.count, 0)
  const weighed = quantityOf(pan, 'goldMass')
  const usable = weighed?.value != null && weighed.value > 0 && weighed.mark !== 'below'
  if (!usable && pan.fields.colours === undefined && weighed?.mark !== 'nil' && weighed?.mark !== 'below' && weighed?.value !== 0) return undefined
  const mg = usable ? weighed.value * 1000 : counted
  // A count says nothing of how well the guessed mass of a colour is known; a weight does not need it.
  const sd = usable ? weighingSd : seen > 0 ? counted * colourSd / Math.sqrt(Math.max(1, colours.filter(c => c.count > 0).length)) : 0
  return { mg, sd, colours, seen, says: usable ? `${weighed.text} weighed` : seen === 0 ? 'nothing seen' : `${seen} colours` }
}

/**
 * A pan as a look, with what its tails gave when they were panned again. Undefined when it says nothing of gold.
 * @param recovery  share of the gold that one panning keeps, with its relative doubt
 */
export function panLook(
  pan: Entry, grain: number, recovery: { readonly share: number, readonly relativeSd: number }, tails: readonly Entry[] = [],
): Look | undefined {
  const mass = valueOf(pan, 'mass'), first = goldIn(pan)
  if (mass === undefined || !first) return undefined
  const more = tails.flatMap(t => goldIn(t) ?? []), all = [first, ...more]
  const mg = all.reduce((sum, g) => sum + g.mg, 0), sd = Math.hypot(...all.map(g => g.sd))
  const colours = all.flatMap(g => g.colours), counted = colours.reduce((sum, c) => sum + c.count * c.mgEach, 0)
  const own = counted > 0 ? colours.reduce((sum, c) => sum + c.count * c.mgEach ** 2, 0) / counted : grain
  const kept = more.length === 0 ? recovery.share : twicePanned(recovery.share)
  const doubt = mg > 0 ? Math.min(1, sd / mg) : 0
  return {
    entry: pan, says: `${first.says} in ${quantityOf(pan, 'mass')!.text}${more.length === 0 ? '' : `, and ${more.map(g => g.says).join(', ')} in the tails`}`,
    ...(tails.length === 0 ? {} : { also: tails }),
    look: { mass, grain: mg > 0 ? own : grain, recovery: kept, relativeSd: Math.hypot(recovery.relativeSd, doubt), found: { grade: mg * 1000 / mass } },
  }
}

/**
 * What two pannings keep together. Gold that slipped away once is the finer and slips away again more easily: half as much of it is taken to be
 * caught as in the first pan. Common practice, no source.
 */
const twicePanned = (share: number): number => share + (1 - share) * share / 2

export const bagOf = (entry: Entry): string => textOf(entry, 'bag') ?? ''
