import type { Making } from '../making.ts'
import type { Random } from '../random.ts'
import { goldIn, grainClasses, type Grains } from '../truth/grains.ts'
import { dayText, timeOn } from '../write/clock.ts'
import { firstLaboratory, moss, secondLaboratory } from '../write/crew.ts'
import type { Split } from './lab.ts'
import { blankName, highStandard, lowStandard } from './sampling.ts'

export const certified = { [highStandard]: { gold: 6.1, deviation: 0.22 }, [lowStandard]: { gold: 0.95, deviation: 0.05 } } as const
/** Analytical part of a fire assay's error, share; the coarse gold in the charge comes on top. */
const analytical = 0.05
/** Least that can be told, g/t: 0.005 troy ounce to the short ton, and 0.05 g/t. */
const limits = { first: 0.005 * 240 / 7, second: 0.05 }
const charge = 30
/** What the barren quartz carries, and what was left in the pulveriser by the bag before it when it was not cleaned, g/t. */
const barren = 0.02

interface Lot { readonly bag: string, readonly grade: (rng: Random) => number, readonly sort: 'split' | 'blank' | 'standard', readonly gold: number }

/** The blanks' and standards' definitions, and the assays of all splits with blanks and standards set among them, half at each laboratory. */
export function assays(making: Making, splits: readonly Split[]): void {
  const { diary } = making, rng = making.numbers('assays'), start = timeOn('2026-06-26', 17)
  diary.write(moss, start, 'standard', { name: blankName, sort: 'blank', source: 'barren quartz from the road cut, invented', note: 'Assayed below the limit four times.' })
  for (const [i, name] of [highStandard, lowStandard].entries()) {
    const { gold, deviation } = certified[name as keyof typeof certified]
    diary.write(moss, start + (i + 1) * 60_000, 'standard', { name, sort: 'standard', gold: `${gold} g/t`, deviation: `${deviation} g/t`, source: 'certified pulp, invented' })
  }
  const lots = arrange(making, splits), contaminated = making.careless ? afterRichest(lots) : undefined
  const half = Math.ceil(lots.length / 2)
  lots.forEach((lot, i) => {
    const first = i < half, at = timeOn(first ? '2026-08-10' : '2026-09-07', 19, i % half), dirty = lot === contaminated
    const value = dirty ? 1.6 * rng.lognormal(1, 0.15) : lot.grade(rng)
    const entry = diary.write(moss, at, 'assay', {
      bag: lot.bag, gold: reported(value, first), silver: lot.sort === 'split' && !first ? `${(2 + value * rng.uniform(0.2, 0.5)).toFixed(1)} g/t` : undefined, method: 'fire assay', charge: `${charge} g`, repeat: '0',
      sequence: `${i % half + 1}`, laboratory: first ? firstLaboratory : secondLaboratory, certificate: first ? 'INV-0117' : 'INV-0242', reported: dayText(at), note: 'Invented result.',
    })
    if (dirty) {
      making.mistakes.push({ sort: 'blank carries gold', entries: [entry], right: '<0.005 oz/ton',
        sentence: `Blank ${lot.bag} carries gold that the pulveriser kept from the rich bag before it.` })
    }
  })
}

/** The order on the laboratory's sheet: bags by number, a blank or a standard after every few; the first blank right after the richest bag. */
function arrange({ diary }: Making, splits: readonly Split[]): Lot[] {
  const checks = diary.notes.flatMap(({ draft: { kind, set } }): Lot[] => kind !== 'sample' || (set.role !== 'blank' && set.role !== 'standard') ? [] : [
    set.role === 'blank' ? { bag: set.bag as string, sort: 'blank', gold: 0, grade: rng => Math.max(0, rng.normal(barren, 0.01)) }
      : { bag: set.bag as string, sort: 'standard', gold: 0, grade: rng => rng.normal(certifiedGrade(set.standard as string), certifiedGrade(set.standard as string) * analytical * 0.8) }])
  const lots = splits.map((split): Lot => ({ bag: split.bag, sort: 'split', gold: goldIn(split.grains) / split.grams, grade: rng => fire(rng, split.grains, split.grams) }))
  const blanks = checks.filter(lot => lot.sort === 'blank'), others = checks.filter(lot => lot.sort !== 'blank'), out: Lot[] = []
  const richest = lots.reduce<Lot | undefined>((best, lot) => best === undefined || lot.gold > best.gold ? lot : best, undefined)
  const later = [...blanks.slice(1), ...others].sort((a, b) => a.bag.slice(-1).localeCompare(b.bag.slice(-1)) || a.bag.localeCompare(b.bag))
  const every = Math.max(1, Math.floor(lots.length / (later.length + 1)))
  lots.forEach((lot, i) => {
    out.push(lot)
    if (lot === richest && blanks[0] !== undefined) out.push(blanks[0])
    else if (i % every === every - 1 && later.length > 0) out.push(later.shift()!)
  })
  return [...out, ...later]
}

const certifiedGrade = (name: string): number => certified[name as keyof typeof certified].gold
const afterRichest = (lots: readonly Lot[]): Lot | undefined => lots.find((lot, i) => lot.sort === 'blank' && i > 0 && lots[i - 1]!.sort === 'split' && lots.every(other => other.gold <= lots[i - 1]!.gold))

/** Grade of one charge: the pulveriser breaks coarse grains up, the charge catches some of the pieces, the assay adds its own error. */
function fire(rng: Random, grains: Grains, grams: number): number {
  const caught = grainClasses.map((g, i) => rng.binomial(grains[i]! * g.pieces, Math.min(1, charge / grams)) / g.pieces)
  return Math.max(0, goldIn(caught) / charge * 1000 * (1 + rng.normal(0, analytical)))
}

/** As the laboratory prints it: ounces to the short ton, or grams to the tonne. */
function reported(value: number, first: boolean): string {
  if (!first) return value < limits.second ? '<0.05 g/t' : `${value.toFixed(2)} g/t`
  return value < limits.first / 2 ? '<0.005 oz/ton' : value < limits.first ? 'tr' : `${(value * 7 / 240).toFixed(3)} oz/ton`
}
