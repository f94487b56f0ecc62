import type { Entry } from '@lodebook/book'
import type { NotEnough } from '../answer.ts'
import { buildAnswer } from '../build-answer.ts'
import { textOf } from '../read.ts'
import { plural } from '../words.ts'
import { bagFaults } from './bag-faults.ts'
import { treesOf } from './bag-tree.ts'
import { bagAt, byBag } from './bag-way.ts'
import type { BagRecord } from './bag-way.ts'
import { rollUses } from './rolls.ts'
import type { BagFault, Bags } from './shapes.ts'

export interface BagsInput extends BagRecord { readonly rolls: readonly Entry[] }

const method = { name: 'every number and every hand a bag went through, held against each other', page: 'bags' }

/** Whether every bag can be accounted for: numbers, ways, gaps. */
export function bagsOf(input: BagsInput): Bags | NotEnough {
  const { samples, splits, rolls } = input
  if (samples.length + splits.length + rolls.length === 0) {
    return {
      notEnough: true, sentence: 'No bag is written yet.', cautions: [],
      wanted: [{ kind: 'label-roll', why: 'a roll of printed labels, so that no number is used twice and none is lost' }, { kind: 'sample', why: 'the first bag, with its number and its place' }],
    }
  }
  const all = byBag(input), bags = [...samples, ...splits].map(entry => bagAt(entry, all))
  const uses = rollUses(rolls, bags.map(b => b.bag)), faults = bagFaults(input, all, bags, uses)
  const followed = bags.filter(b => b.steps.some(s => s.kind === 'custody')).length
  return {
    sentence: sentenceOf(faults, bags.length), rolls: uses, faults, bags, trees: treesOf(samples, all),
    figures: [
      buildAnswer({ id: 'bags.taken', value: bags.length, sentence: `${plural(bags.length, 'bag')} written, ${splits.length} of them splits.`, method, from: [...samples, ...splits].map(e => e.id) }),
      buildAnswer({
        id: 'bags.followed', value: followed, sentence: `The way of ${followed} of ${bags.length} bags is written from hand to hand.`, method, from: input.custody.map(e => e.id),
        cautions: followed < bags.length ? ['a bag without custody entries may have been changed, opened or salted without a trace'] : [],
      }),
      buildAnswer({ id: 'bags.faults', value: faults.length, sentence: faults.length === 0 ? 'Nothing is left open.' : `${plural(faults.length, 'thing')} left open.`, method, from: faults.flatMap(f => f.entries) }),
    ],
    cautions: samples.some(s => textOf(s, 'seal') === undefined) && rolls.length > 0 ? ['some bags were taken without a seal'] : [],
  }
}

const words: Readonly<Record<BagFault['sort'], (n: number) => string>> = {
  'used twice': n => `${plural(n, 'number')} used twice`, skipped: n => `${plural(n, 'number')} passed over`, 'never seen again': n => `${plural(n, 'bag')} never seen again`,
  'no result': n => `${plural(n, 'bag')} sent without a result yet`, 'result without a bag': n => `${plural(n, 'result')} for bags nobody took`, custody: n => `${plural(n, 'bag')} with a gap in custody`,
}

function sentenceOf(faults: readonly BagFault[], bags: number): string {
  const parts = (Object.keys(words) as BagFault['sort'][]).flatMap((sort) => {
    const of = new Set(faults.filter(f => f.sort === sort).flatMap(f => f.bags)).size
    return of > 0 ? [words[sort](of)] : []
  })
  return parts.length === 0 ? `All ${bags} bags can be accounted for.` : `Of ${plural(bags, 'bag')}: ${parts.join(', ')}. The rest can be accounted for.`
}
