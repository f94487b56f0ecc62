import type { Entry } from '@lodebook/book'
import { sampleBelief } from '@lodebook/reckon/assay'
import type { GradePrior } from '@lodebook/reckon/assay'
import type { Assume } from '../assumptions.ts'
import type { Belief } from '../belief.ts'
import { buildAnswer } from '../build-answer.ts'
import { textOf } from '../read.ts'
import { grade as gradeWords, figure, plural } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { assayLook, bagOf, grainFrom, panLook, standingAssays, withTails } from './looks.ts'
import type { Look } from './looks.ts'
import { pannerOf, recoveriesOf } from './pan-recovery.ts'
import type { PannedAndAssayed, Recoveries, Recovery } from './pan-recovery.ts'
import { screenedSplits } from './screened-splits.ts'

export interface LookInput {
  readonly splits: readonly Entry[]
  readonly pans: readonly Entry[]
  readonly assays: readonly Entry[]
  readonly assume: Assume
}

/** Wide enough to leave a sample its own say: a factor of 7 either way is one standard deviation. */
const priorLogSd = 2

/** Every look at every bag, those at its splits with it, and what they share. */
export interface BaggedLooks {
  readonly looks: ReadonlyMap<string, readonly Look[]>
  readonly grain: number
  readonly grainAssumed: ReturnType<Assume> | undefined
  readonly recoveries: Recoveries
  /** The bag that a split came from in the end; itself for a bag. */
  readonly root: (bag: string) => string
}

export function looksByBag({ splits, pans, assays, assume }: LookInput): BaggedLooks {
  const root = rootOf(splits)
  const given = assume('gold grain')
  const counted = grainFrom(pans)
  const grain = counted ?? given.value
  const screened = screenedSplits(splits, assays, grain, assume)
  const assayed = [
    ...screened.looks,
    ...standingAssays(assays.filter(a => !screened.used.has(a.id))).flatMap((a) => {
      const look = assayLook(a, grain, assume)
      return look ? [{ bag: bagOf(a), look }] : []
    }),
  ]
  const panned = withTails(pans)
  const bareLook = (pan: Entry) => panLook(pan, grain, { share: 1, relativeSd: 0 })
  const bare = panned.flatMap(({ pan, tails }) => {
    const look = tails.length === 0 ? bareLook(pan) : undefined
    const assay = look && assayed.find(a => root(a.bag) === root(bagOf(pan)))?.look
    return look && assay ? [{ pan: look.look, assay: assay.look, panner: pannerOf(pan), entries: [pan.id, assay.entry.id] } satisfies PannedAndAssayed] : []
  })
  const recoveries = recoveriesOf(pans, bare, middleLog([...assayed.map(a => a.look), ...panned.flatMap(({ pan }) => bareLook(pan) ?? [])]), assume)
  const looks = new Map<string, Look[]>()
  const add = (bag: string, look: Look) => looks.set(root(bag), [...looks.get(root(bag)) ?? [], look])
  for (const { bag, look } of assayed) add(bag, look)
  for (const { pan, tails } of panned) {
    const look = panLook(pan, grain, recoveries.of.get(pannerOf(pan)) ?? recoveries.all, tails)
    if (look) add(bagOf(pan), look)
  }
  return { looks, grain, grainAssumed: counted === undefined ? given : undefined, recoveries, root }
}

function rootOf(splits: readonly Entry[]): (bag: string) => string {
  const parent = new Map(splits.map(split => [bagOf(split), textOf(split, 'of')!]))
  return (bag) => {
    const seen = new Set<string>()
    let at = bag
    while (parent.has(at) && !seen.has(at)) { seen.add(at); at = parent.get(at)! }
    return at
  }
}

/** What may be believed of every bag that was panned or assayed. */
export function beliefsOf({ looks, grain, grainAssumed, recoveries }: BaggedLooks, samples: readonly Entry[], units: CrewUnits): ReadonlyMap<string, Belief> {
  const prior = { logMean: middleLog([...looks.values()].flat()), logSd: priorLogSd }
  const entries = new Map(samples.map(sample => [bagOf(sample), sample]))
  const common: Common = { prior, grain, recovery: recoveries.all, grainAssumed, units }
  return new Map([...looks].map(([bag, list]) => [bag, beliefOf(bag, list, entries.get(bag), common)]))
}

/** The middle of the logs of what was found: where an unknown sample of this book may be thought to lie. */
function middleLog(all: readonly Look[]): number {
  const found = all.flatMap(({ look }) => 'grade' in look.found && look.found.grade > 0 ? [Math.log(look.found.grade / look.recovery)] : []).sort((a, b) => a - b)
  return found[Math.floor(found.length / 2)] ?? 0
}

interface Common {
  readonly prior: GradePrior
  readonly grain: number
  readonly recovery: Recovery
  readonly grainAssumed: ReturnType<Assume> | undefined
  readonly units: CrewUnits
}

function beliefOf(bag: string, list: readonly Look[], sample: Entry | undefined, { prior, grain, recovery, grainAssumed, units }: Common): Belief {
  const belief = sampleBelief(list.map(l => l.look), prior)
  const below = list.every(({ look }) => 'below' in look.found || ('grade' in look.found && look.found.grade === 0))
  const panned = list.some(l => l.entry.kind === 'pan')
  return {
    bag, grade: belief.median, mean: belief.mean,
    logMean: belief.evidence.logValue, logSd: Math.sqrt(belief.evidence.variance), low: belief.low, high: belief.high, below,
    answer: buildAnswer({
      id: `lab.bag.${bag}`, value: belief.median, unit: 'g/t',
      sentence: below ? `Bag ${bag}: nothing found in ${plural(list.length, 'look')}; nine times in ten it holds less than ${gradeWords(belief.high, units)}.`
        : `Bag ${bag} ran about ${gradeWords(belief.median, units)} (80 %: ${gradeWords(belief.low, units)} to ${gradeWords(belief.high, units)}), ${list.map(l => l.says).join('; ')}.`,
      range: { low: belief.low, high: belief.high, confidence: 0.8, because: ['how few grains the portions can have held', panned ? 'pan recovery' : 'assay precision'] },
      method: {
        name: 'all looks at one bag, by Poisson grain counts', page: 'sample-belief',
        working: [`grains of ${figure(grain, 2)} mg carry the gold`, ...list.map(({ look, says }) => `${says}: ${figure(look.mass, 3)} g looked at, recovery ${figure(look.recovery, 2)}`)],
      },
      from: [...(sample ? [sample.id] : []), ...list.flatMap(l => [l.entry.id, ...(l.also ?? []).map(e => e.id)]), ...(panned ? recovery.from : [])],
      assumed: grainAssumed ? [grainAssumed] : [],
    }),
  }
}
