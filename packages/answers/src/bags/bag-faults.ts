import type { Entry } from '@lodebook/book'
import { textOf } from '../read.ts'
import { plural } from '../words.ts'
import { bagKey, bagWords } from './bag-number.ts'
import type { BagRecord, ByBag } from './bag-way.ts'
import type { BagAt, BagFault, RollUse } from './shapes.ts'

/** What the numbers and ways of the bags do not account for, the gravest first. */
export function bagFaults(record: BagRecord, all: ByBag, bags: readonly BagAt[], rolls: readonly RollUse[]): readonly BagFault[] {
  return [...usedTwice(all), ...withoutBag(record, all), ...custodyGaps(bags), ...lost(bags), ...skipped(rolls), ...unanswered(bags, all)]
}

function usedTwice(all: ByBag): readonly BagFault[] {
  const keys = new Set([...all.samples.keys(), ...all.splits.keys()])
  return [...keys].flatMap((k): BagFault[] => {
    const with_ = [...all.samples.get(k) ?? [], ...all.splits.get(k) ?? []], bag = with_[0] && textOf(with_[0], 'bag')!
    return with_.length < 2 || bag === undefined ? [] : [{
      sort: 'used twice', bags: [bag], entries: with_.map(e => e.id),
      sentence: `Number ${bag} is on ${with_.length} bags: ${with_.map(e => [e.createdBy, textOf(e, 'taken') ?? textOf(e, 'made')].filter(Boolean).join(', ')).join('; ')}. What was panned or assayed under it may belong to either.`,
      todo: 'Find both bags, give one a fresh number, and mend its entry; believe no result under this number until then.',
    }]
  })
}

function withoutBag({ pans, assays }: BagRecord, all: ByBag): readonly BagFault[] {
  const strays = new Map<string, Entry[]>()
  for (const entry of [...assays, ...pans]) {
    const bag = textOf(entry, 'bag') ?? ''
    if (!all.samples.has(bagKey(bag)) && !all.splits.has(bagKey(bag))) strays.set(bag, [...strays.get(bag) ?? [], entry])
  }
  return [...strays].map(([bag, entries]): BagFault => ({
    sort: 'result without a bag', bags: [bag], entries: entries.map(e => e.id), sentence: `There is a result for bag ${bag}, which nobody wrote as taken or split.`,
    todo: 'See whether the number was misread or misprinted; write the bag, or strike the result.',
  }))
}

/** One fault a gap, for all bags that share it. */
function custodyGaps(bags: readonly BagAt[]): readonly BagFault[] {
  const shared = new Map<string, BagAt[]>()
  for (const bag of bags) for (const gap of bag.gaps) shared.set(gap, [...shared.get(gap) ?? [], bag])
  return [...shared].map(([gap, of]): BagFault => ({
    sort: 'custody', bags: of.map(b => b.bag), entries: [...new Set(of.flatMap(b => b.steps.filter(s => s.kind === 'custody').map(s => s.entry)))],
    sentence: `${of.length === 1 ? 'Bag' : plural(of.length, 'bag') + ','} ${bagWords(of.map(b => b.bag))}: ${gap}.`,
    todo: 'Ask who had them, and write what is known; a result that nobody can vouch for stays in the book but should not carry a decision alone.',
  }))
}

function lost(bags: readonly BagAt[]): readonly BagFault[] {
  const gone = bags.filter(b => b.fate === 'not seen again')
  return gone.length === 0 ? [] : [{
    sort: 'never seen again', bags: gone.map(b => b.bag), entries: gone.map(b => b.entry),
    sentence: `${plural(gone.length, 'bag')} taken and neither panned, sent, tested nor kept: ${bagWords(gone.map(b => b.bag))}.`,
    todo: 'Look for them on the shelf; write them as kept, or strike them with the reason.',
  }]
}

const skipped = (rolls: readonly RollUse[]): readonly BagFault[] => rolls.flatMap((roll): BagFault[] => roll.skipped.length === 0 ? [] : [{
  sort: 'skipped', bags: roll.skipped, entries: roll.entry === '' ? [] : [roll.entry],
  sentence: `${plural(roll.skipped.length, 'number')} of the run ${roll.name} passed over: ${bagWords(roll.skipped)}.`,
  todo: 'A label was spoilt, or a bag was filled and not written. Look for the bag before the label is forgotten.',
}])

function unanswered(bags: readonly BagAt[], all: ByBag): readonly BagFault[] {
  const waiting = bags.filter(b => b.fate === 'sent' && !(all.splitsOf.get(bagKey(b.bag)) ?? []).some(s => all.assays.has(bagKey(textOf(s, 'bag')!))))
  return waiting.length === 0 ? [] : [{
    sort: 'no result', bags: waiting.map(b => b.bag), entries: waiting.map(b => b.entry), sentence: `${plural(waiting.length, 'bag')} sent without a result yet: ${bagWords(waiting.map(b => b.bag))}.`,
    todo: 'Ask the laboratory for them by number.',
  }]
}
