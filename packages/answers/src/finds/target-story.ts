import type { Entry } from '@lodebook/book'
import { buildAnswer } from '../build-answer.ts'
import { numberOf, placeOf, quantityOf, textOf, wordsOf } from '../read.ts'
import type { CrewUnits } from '../words.ts'
import { figure } from '../words.ts'
import { panGold, pickedGold } from './pan-gold.ts'
import { placeText } from './place-text.ts'
import type { TargetState, TargetStep, TargetStory } from './shapes.ts'

/** The entries that a target's chain can run through. */
export interface ChainLinks {
  readonly sweeps: readonly Entry[]
  readonly checks: readonly Entry[]
  readonly samples: readonly Entry[]
  readonly splits: readonly Entry[]
  readonly pans: readonly Entry[]
  readonly assays: readonly Entry[]
  readonly units: CrewUnits
}

/** Marks and bags are compared as a person reads them. */
const key = (name: string | undefined): string => (name ?? '').trim().toLowerCase()
const when = (entry: Entry, field: string): string => textOf(entry, field) ?? entry.createdAt
/** A mass as written, in grams at the end for figures. */
const milligrams = (mg: number): string => mg >= 1000 ? `${figure(mg / 1000, 3)} g` : `${figure(mg, 3)} mg`

/** Follows one target from the sweep that rang to the gold that was weighed, or to whatever else it was. */
export function targetStory(target: Entry, links: ChainLinks): TargetStory {
  const mark = textOf(target, 'mark') ?? '', own = (entry: Entry, field = 'mark') => mark !== '' && key(textOf(entry, field)) === key(mark)
  const checks = links.checks.filter(check => own(check)).sort((a, b) => when(a, 'checked') < when(b, 'checked') ? -1 : 1)
  const bags = bagsOf(target, checks, links)
  const inBags = (entries: readonly Entry[], field = 'bag') => entries.filter(entry => bags.has(key(textOf(entry, field))))
  const pans = inBags(links.pans), assays = inBags(links.assays)
  const sweep = mark === '' ? undefined : links.sweeps.find(s => wordsOf(s, 'marks').some(word => key(word) === key(mark)))
  const steps: readonly TargetStep[] = [
    ...sweep ? [step(sweep, `Swept ${placeText(placeOf(sweep, 'from'), links.units).replace(/^at /, '')} to ${placeText(placeOf(sweep, 'to'), links.units).replace(/^at /, '')}, ${wordsOf(sweep, 'sides').join(', ')}: it rang.`, 'swept')] : [],
    step(target, heard(target, links.units), 'found'),
    ...checks.map(check => step(check, checkSays(check), 'checked')),
    ...inBags(links.samples).map(sample => step(sample, `Bag ${textOf(sample, 'bag')!} taken${quantityOf(sample, 'mass') ? `, ${quantityOf(sample, 'mass')!.text} dry` : ''}.`, 'taken')),
    ...inBags(links.splits, 'of').map(split => step(split, `Split ${textOf(split, 'bag')!} taken from bag ${textOf(split, 'of')!}${quantityOf(split, 'mass') ? `, ${quantityOf(split, 'mass')!.text}` : ''}.`, 'made')),
    ...pans.map(pan => step(pan, `${quantityOf(pan, 'mass')?.text ?? ''} of bag ${textOf(pan, 'bag')!} crushed and panned: ${panGold(pan).says}.`, 'panned')),
    ...assays.map(assay => step(assay, `Bag ${textOf(assay, 'bag')!} assayed ${quantityOf(assay, 'gold')?.text ?? ''}.`, 'reported')),
  ]
  const found = goldOf(target, checks, pans), state = stateOf(target, checks, pans, found)
  const open = state === 'open' || state === 'still in the wall' || state === 'in a piece' || state === 'in the mortar'
  const named = mark === '' ? 'This target' : `Target ${mark}`
  return {
    entry: target.id, mark, state, open, strength: numberOf(target, 'strength'), character: textOf(target, 'character') ?? '', steps,
    next: nextFor(state), sentence: `${named}: ${endSays(state, found?.mg)}.`,
    gold: found && buildAnswer({
      id: `finds.target.${mark || target.id}.gold`, value: found.mg, unit: 'mg', sentence: `${named} gave ${milligrams(found.mg)} of gold as weighed.`,
      method: { name: 'what was weighed or counted along the chain', page: 'finds', working: found.working }, from: [target.id, ...checks.map(c => c.id), ...pans.map(p => p.id)],
      cautions: pans.length > 0 ? ['what panning lost is not in it'] : [],
    }),
  }
}

const step = (entry: Entry, says: string, field: string): TargetStep =>
  ({ entry: entry.id, kind: entry.kind, says, who: textOf(entry, 'by') ?? textOf(entry, 'panner') ?? textOf(entry, 'collector') ?? entry.createdBy, when: when(entry, field) })

function heard(target: Entry, units: CrewUnits): string {
  const strength = numberOf(target, 'strength'), depth = quantityOf(target, 'depth')
  const signal = [strength === undefined ? undefined : `strength ${strength} of 10`, textOf(target, 'character'), depth && `${depth.text} deep`].filter(Boolean).join(', ')
  return `Heard ${placeText(placeOf(target), units)}${signal ? `: ${signal}` : ''}.`
}

function checkSays(check: Entry): string {
  const found = textOf(check, 'found')!, piece = quantityOf(check, 'piece'), became = textOf(check, 'became'), bag = textOf(check, 'bag')
  const first = found === 'in this piece' ? `Broken off: it rings in ${piece ? `a piece of ${piece.text}` : 'the piece'}` : found === 'gone' ? 'The signal is gone' : 'Broken off and checked: still in the wall'
  return `${first}${became ? `; ${became === 'piece for the mortar' ? 'a piece for the mortar' : became}` : ''}${bag ? `, bag ${bag}` : ''}.`
}

/** The bags that hold what was broken off, with all that was split from them. */
function bagsOf(target: Entry, checks: readonly Entry[], { samples, splits }: ChainLinks): ReadonlySet<string> {
  const mark = key(textOf(target, 'mark'))
  const bags = new Set([textOf(target, 'bag'), ...checks.map(check => textOf(check, 'bag')),
    ...samples.filter(sample => mark !== '' && key(textOf(sample, 'target')) === mark).map(sample => textOf(sample, 'bag'))].map(key).filter(Boolean))
  for (let before = -1; before < bags.size;) {
    before = bags.size
    for (const split of splits) if (bags.has(key(textOf(split, 'of')))) bags.add(key(textOf(split, 'bag')))
  }
  return bags
}

/** Gold at the end of the chain: what was picked out and weighed, and what the pans gave. The target's own weight counts only when no step has one. */
function goldOf(target: Entry, checks: readonly Entry[], pans: readonly Entry[]): { readonly mg: number, readonly working: readonly string[] } | undefined {
  const later = [...checks.flatMap(c => pickedGold(c) ?? []), ...pans.map(panGold)], all = later.length > 0 ? later : [pickedGold(target)].flatMap(p => p ?? [])
  return all.length === 0 ? undefined : { mg: all.reduce((sum, p) => sum + p.mg, 0), working: all.map(p => p.says) }
}

function stateOf(target: Entry, checks: readonly Entry[], pans: readonly Entry[], gold: { readonly mg: number } | undefined): TargetState {
  const last = checks.at(-1), became = checks.map(c => textOf(c, 'became')).filter(Boolean).at(-1), outcome = textOf(target, 'outcome')
  if (gold && gold.mg > 0) return 'gold'
  if (pans.length > 0) return 'no gold in the pan'
  if (became === 'piece for the mortar') return 'in the mortar'
  if (became !== undefined) return became as TargetState
  if (last) return { 'still in the wall': 'still in the wall', 'in this piece': 'in a piece', gone: 'gone' }[textOf(last, 'found')!] as TargetState
  return (outcome ?? 'open') as TargetState
}

function endSays(state: TargetState, mg: number | undefined): string {
  switch (state) {
    case 'gold': return mg === undefined ? 'gold, not weighed yet' : `gold, ${milligrams(mg)} of it`
    case 'open': return 'not followed up yet'
    case 'still in the wall': return 'it still rings in the wall'
    case 'in a piece': return 'it rings in a piece broken off, not isolated yet'
    case 'in the mortar': return 'a piece for the mortar, not panned yet'
    case 'no gold in the pan': return 'crushed and panned, no gold seen'
    case 'gone': return 'the signal went and nothing was found; it may lie in the muck or have been a ghost'
    default: return state
  }
}

function nextFor(state: TargetState): string {
  switch (state) {
    case 'open': return 'Pin it down with the small coil, mark it, and break off a little at a time.'
    case 'still in the wall': return 'Break off the next piece and pass both the piece and the wall under the coil.'
    case 'in a piece': return 'Halve the piece and check each half until it is isolated.'
    case 'in the mortar': return 'Dry and weigh the piece, crush it wet, pan it, and keep the tails.'
    case 'gone': return 'Pass the muck under the spot a handful at a time before it is shovelled away.'
    default: return ''
  }
}
