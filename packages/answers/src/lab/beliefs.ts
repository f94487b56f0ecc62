import type { Entry } from '@lodebook/book'
import { sampleBelief } from '@lodebook/reckon/assay'
import type { GradePrior } from '@lodebook/reckon/assay'
import type { Assume } from '../assumptions.ts'
import type { Belief } from '../belief.ts'
import { buildAnswer } from '../build-answer.ts'
import { textOf } from '../read.ts'
import { grade as gradeWords, figure, plural } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { assayLook, bagOf, grainFrom, panLook, panRecovery } from './looks.ts'
import type { Look } from './looks.ts'

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
  readonly recovery: ReturnType<typeof panRecovery>
}

export function looksByBag({ splits, pans, assays, assume }: LookInput): BaggedLooks {
  const parent = new Map(splits.map(split => [bagOf(split), textOf(split, 'of')!]))
  const root = (bag: string): string => {
    const seen = new Set<string>()
    let at = bag
    while (parent.has(at) && !seen.has(at)) { seen.add(at); at = parent.get(at)! }
    return at
  }
  const given = assume('gold grain')
  const counted = grainFrom(pans)
  const grain = counted ?? given.value
  const recovery = panRecovery(pans, assume)
  const looks = new Map<string, Look[]>()
  const add = (bag: string, look: Look | undefined) => {
    if (!look) return
    const list = looks.get(root(bag))
    if (list) list.push(look)
    else looks.set(root(bag), [look])
  }
  for (const assay of assays) add(bagOf(assay), assayLook(assay, grain, assume))
  for (const pan of pans) add(bagOf(pan), panLook(pan, grain, recovery))
  return { looks, grain, grainAssumed: counted === undefined ? given : undefined, recovery }
}

/** What may be believed of every bag that was panned or assayed. */
export function beliefsOf({ looks, grain, grainAssumed, recovery }: BaggedLooks, samples: readonly Entry[], units: CrewUnits): ReadonlyMap<string, Belief> {
  const prior = { logMean: middleLog([...looks.values()]), logSd: priorLogSd }
  const entries = new Map(samples.map(sample => [bagOf(sample), sample]))
  const common: Common = { prior, grain, recovery, grainAssumed, units }
  return new Map([...looks].map(([bag, list]) => [bag, beliefOf(bag, list, entries.get(bag), common)]))
}

/** The middle of the logs of what was found: where an unknown sample of this book may be thought to lie. */
function middleLog(all: readonly (readonly Look[])[]): number {
  const found = all.flatMap(list => list.flatMap(({ look }) => 'grade' in look.found && look.found.grade > 0 ? [Math.log(look.found.grade / look.recovery)] : [])).sort((a, b) => a - b)
  return found[Math.floor(found.length / 2)] ?? 0
}

interface Common {
  readonly prior: GradePrior
  readonly grain: number
  readonly recovery: { readonly share: number, readonly from: readonly string[] }
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
      from: [...(sample ? [sample.id] : []), ...list.map(l => l.entry.id), ...(panned ? recovery.from : [])], assumed: grainAssumed ? [grainAssumed] : [],
    }),
  }
}
