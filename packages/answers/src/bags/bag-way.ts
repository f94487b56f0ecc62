import type { Entry } from '@lodebook/book'
import { panGold } from '../finds/pan-gold.ts'
import { quantityOf, textOf, wordsOf } from '../read.ts'
import { bagKey, bagsNamed } from './bag-number.ts'
import type { BagAt, BagStep } from './shapes.ts'

/** All that is written about bags. */
export interface BagRecord {
  readonly samples: readonly Entry[]
  readonly splits: readonly Entry[]
  readonly pans: readonly Entry[]
  readonly assays: readonly Entry[]
  readonly densities: readonly Entry[]
  readonly custody: readonly Entry[]
}

/** The same, by bag. */
export type ByBag = { readonly [K in keyof BagRecord]: ReadonlyMap<string, readonly Entry[]> } & { readonly splitsOf: ReadonlyMap<string, readonly Entry[]> }

export function byBag(record: BagRecord): ByBag {
  const index = (entries: readonly Entry[], bags: (entry: Entry) => readonly string[]) => {
    const map = new Map<string, Entry[]>()
    for (const entry of entries) for (const bag of new Set(bags(entry).map(bagKey))) map.set(bag, [...map.get(bag) ?? [], entry])
    return map
  }
  const own = (entry: Entry) => [textOf(entry, 'bag') ?? ''].filter(Boolean)
  return {
    samples: index(record.samples, own), splits: index(record.splits, own), pans: index(record.pans, own),
    assays: index(record.assays, own), densities: index(record.densities, own),
    custody: index(record.custody, entry => bagsNamed(wordsOf(entry, 'bags'))), splitsOf: index(record.splits, entry => [textOf(entry, 'of')!]),
  }
}

/** A day stands for its evening, so that what happened at a stated hour of it comes before. */
const order = (step: BagStep): string => step.when.length === 10 ? `${step.when}T24` : new Date(step.when).toISOString()

/** A bag's way as far as it is written, and what became of it. */
export function bagAt(entry: Entry, all: ByBag): BagAt {
  const bag = textOf(entry, 'bag')!, k = bagKey(bag)
  const of = (kind: Exclude<keyof ByBag, 'samples'>) => all[kind].get(k) ?? []
  const began = step(entry, entry.kind === 'split' ? 'split' : 'taken', entry.kind === 'split' ? `split off bag ${textOf(entry, 'of')!}` : 'taken',
    textOf(entry, 'collector') ?? entry.createdBy, textOf(entry, 'taken') ?? textOf(entry, 'made') ?? entry.createdAt)
  const later = [
    ...of('custody').map(c => step(c, textOf(c, 'act')!, [textOf(c, 'act')!, textOf(c, 'to') && `to ${textOf(c, 'to')!}`].filter(Boolean).join(' '), textOf(c, 'who')!, textOf(c, 'when')!)),
    ...of('splitsOf').map(s => step(s, 'split', `${textOf(s, 'bag')!} split off${quantityOf(s, 'mass') ? `, ${quantityOf(s, 'mass')!.text}` : ''}`, s.createdBy, textOf(s, 'made') ?? s.createdAt)),
    ...of('pans').map(p => step(p, 'panned', `panned: ${panGold(p).says}`, textOf(p, 'panner') ?? p.createdBy, textOf(p, 'panned') ?? p.createdAt)),
    ...of('assays').map(a => step(a, 'assayed', `assayed ${quantityOf(a, 'gold')?.text ?? ''}`, textOf(a, 'laboratory') ?? a.createdBy, textOf(a, 'reported') ?? a.createdAt)),
  ].sort((a, b) => order(a) < order(b) ? -1 : order(a) > order(b) ? 1 : 0)
  const steps = [began, ...later], acts = new Set(steps.map(s => s.act))
  const fate = acts.has('assayed') ? 'assayed' : acts.has('panned') ? 'panned' : acts.has('sent') ? 'sent' : acts.has('kept') ? 'kept'
    : of('splitsOf').length > 0 ? 'split' : of('densities').length > 0 ? 'tested' : 'not seen again'
  return { bag, entry: entry.id, kind: entry.kind, fate, steps, gaps: gapsIn(steps) }
}

const step = (entry: Entry, act: string, says: string, who: string, when: string): BagStep =>
  ({ entry: entry.id, kind: entry.kind, act, says, who, when, seal: textOf(entry, 'seal') ?? '', intact: textOf(entry, 'intact') ?? '', to: textOf(entry, 'to') ?? '' })

const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase()
/** What opens a bag: after it another seal is nothing odd. */
const opening = new Set(['dried', 'crushed', 'split', 'panned'])

/**
 * What a bag's custody leaves open: a seal broken or changed with nobody having opened the bag, received by another than it was sent to, a result
 * before it was sent.
 * Bags whose custody nobody wrote have no gaps here; they are counted elsewhere.
 */
function gapsIn(steps: readonly BagStep[]): readonly string[] {
  const gaps: string[] = [], told = steps.filter(s => s.kind === 'custody')
  let seal = steps[0]!.seal, opened = false, sentTo = ''
  for (const s of steps.slice(1)) {
    if (opening.has(s.act)) opened = true
    if (s.kind !== 'custody') continue
    if (s.intact === 'broken' && !opened) gaps.push(`the seal was broken when it was ${s.act}, and nobody wrote that the bag was opened`)
    if (s.seal !== '' && seal !== '' && !same(s.seal, seal) && !opened) gaps.push(`sealed ${seal}, but ${s.act} under seal ${s.seal}, and nobody wrote that the bag was opened`)
    if (s.act === 'received' && sentTo !== '' && !same(s.who, sentTo)) gaps.push(`sent to ${sentTo}, but received by ${s.who}`)
    if (s.act === 'sent') sentTo = s.to
    if (s.seal !== '') seal = s.seal
    if (s.seal !== '') opened = false
  }
  const sent = steps.findIndex(s => s.act === 'sent'), result = steps.findIndex(s => s.act === 'assayed')
  if (sent >= 0 && result >= 0 && result < sent) gaps.push('the result is dated before the bag was sent')
  if (told.some(s => s.act === 'received') && sent < 0) gaps.push('received, but nobody wrote that it was sent')
  return [...new Set(gaps)]
}
