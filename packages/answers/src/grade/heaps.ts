import type { Entry } from '@lodebook/book'
import { drawsFrom } from '@lodebook/reckon'
import type { Draws } from '@lodebook/reckon'
import { drawLognormalMeans, lognormalPosterior } from '@lodebook/reckon/estimate'
import { notEnoughOf } from '../answer.ts'
import type { NotEnough } from '../answer.ts'
import type { Assume, AssumedFigure } from '../assumptions.ts'
import type { Belief } from '../belief.ts'
import { buildAnswer, quantile, rangeOf } from '../build-answer.ts'
import { numberOf, textOf, valueOf, wordsOf } from '../read.ts'
import { figure, grade as gradeWords, plural, rock } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { notResource, outcomesDrawn } from './notice.ts'
import type { Heap, Heaps } from './shapes.ts'
import { gramsPerOunce } from './troy.ts'

export interface HeapsInput {
  readonly heaps: readonly Entry[]
  readonly samples: readonly Entry[]
  readonly beliefs: ReadonlyMap<string, Belief>
  readonly assume: Assume
  readonly units: CrewUnits
}

const seed = 1897
const cautions = [
  notResource,
  'Stacked waste, old dumps and mill tailings can hold mercury, lead and arsenic, and stacks can run: look to that before digging.',
  'Grab samples from the face of a heap tell of its skin; the inside may differ.',
]

/** What the heaps of broken rock hold: gob, dumps, muck and tailings. */
export function heapsOf({ heaps, samples, beliefs, assume, units }: HeapsInput): Heaps | NotEnough {
  if (heaps.length === 0) {
    return notEnoughOf('No heap of broken rock has been measured.', [
      { kind: 'heap', why: 'gob or a dump: its length, breadth and mean height, or its volume' }, { kind: 'sample', why: 'a few samples of it, of method gob or dump, and a pan of each' },
    ], cautions)
  }
  const draws = drawsFrom(seed)
  const told: Heap[] = []
  const untold: { entry: string, name: string, why: string }[] = []
  for (const entry of heaps) {
    const name = textOf(entry, 'name') ?? 'heap', bags = bagsOf(entry, samples, beliefs)
    if (bags.length === 0) untold.push({ entry: entry.id, name, why: `no result of a ${textOf(entry, 'sort') ?? 'heap'} sample tells of it` })
    else told.push(heapAt(entry, name, bags, { assume, units, draws }))
  }
  if (told.length === 0) {
    return notEnoughOf(`${plural(heaps.length, 'heap')} measured, none with a result: not enough to say what is in them.`, [{ kind: 'pan', why: 'a pan from each heap' }], cautions)
  }
  const best = [...told].sort((a, b) => b.ounces.value - a.ounces.value)[0]!
  return {
    sentence: `${best.name}: about ${figure(best.ounces.value, 2)} oz in ${rock(best.tonnes.value, units)}; four times in five between ${figure(best.ounces.range!.low, 2)} and ${figure(best.ounces.range!.high, 2)} oz.`,
    heaps: told, untold, cautions,
  }
}

interface Bag { readonly sample: Entry, readonly belief: Belief }

/** The bags that the heap names; where it names none, every bag of its sort. */
function bagsOf(heap: Entry, samples: readonly Entry[], beliefs: ReadonlyMap<string, Belief>): readonly Bag[] {
  const named = new Set(wordsOf(heap, 'bags')), sort = textOf(heap, 'sort')
  return samples.flatMap((sample) => {
    const bag = textOf(sample, 'bag') ?? '', belief = beliefs.get(bag)
    const meant = named.size > 0 ? named.has(bag) : textOf(sample, 'method') === sort && (textOf(sample, 'role') ?? 'ordinary') === 'ordinary'
    return belief && meant ? [{ sample, belief }] : []
  })
}

const oneSd = ({ low, high }: AssumedFigure) => (high - low) / (2 * 1.2816)

function heapAt(entry: Entry, name: string, bags: readonly Bag[], { assume, units, draws }: { assume: Assume, units: CrewUnits, draws: Draws }): Heap {
  const sides = ['length', 'breadth', 'height'].map(field => valueOf(entry, field))
  const taped = valueOf(entry, 'volume')
  const volume = taped ?? sides.reduce<number>((product, side) => product * side!, 1)
  const error = assume('heap volume error'), good = numberOf(entry, 'volumeGood')
  const relative = good === undefined ? error.value : good / 100
  const own = valueOf(entry, 'density'), loose = assume('loose density')
  const variance = assume('log variance of heap grade')
  const prior = { median: variance.value, factor: Math.max(1.05, (variance.high / variance.value) ** (1 / 1.2816)) }
  const values = bags.map(({ belief }) => ({ logValue: belief.logMean, errorVariance: belief.logSd ** 2 }))
  const grades = drawLognormalMeans(lognormalPosterior(values, prior), outcomesDrawn, draws)
  const tonnes = Float64Array.from(grades, () =>
    volume * Math.exp(relative * draws.normal() - relative * relative / 2) * Math.max(0.1, own ?? loose.value + oneSd(loose) * draws.normal()))
  const ounces = grades.map((g, k) => g * tonnes[k]! / gramsPerOunce)
  const assumed = [variance, ...(own === undefined ? [loose] : []), ...(good === undefined ? [error] : [])]
  const tonnesAnswer = middleAnswer(tonnes, 't', `${name}: ${rock(middle(tonnes), units)} of broken rock.`, {
    id: `heap.${name}.tonnes`, because: ['its volume', 'how loosely it lies'], assumed, from: [entry.id],
    working: [
      taped === undefined
        ? `${sides.map(side => figure(side!, 3)).join(' × ')} m = ${figure(volume, 3)} m³`
        : `${figure(volume, 3)} m³ as written`,
      `× ${figure(own ?? loose.value, 3)} t/m³, volume good to ${figure(100 * relative, 2)} %`,
    ],
  })
  const gradeAnswer = middleAnswer(grades, 'g/t', `${name} runs about ${gradeWords(middle(grades), units)}, from ${plural(bags.length, 'bag')}.`, {
    id: `heap.${name}.grade`, because: ['few samples', 'how the grade varies within it', 'coarse gold in small samples'], assumed: [variance], from: bags.map(b => b.sample.id),
    parts: bags.map(b => b.belief.answer), working: ['mean of a lognormal population from few values, each with its own error; the variance within keeps a stated prior'],
  })
  return {
    entry: entry.id, name, sort: (textOf(entry, 'sort') ?? 'gob') as Heap['sort'], bags: bags.length, tonnes: tonnesAnswer, grade: gradeAnswer,
    ounces: middleAnswer(ounces, 'ozt', `${name}: about ${figure(middle(ounces), 2)} oz.`, {
      id: `heap.${name}.ounces`, because: ['its grade', 'its volume'], assumed, from: [entry.id], parts: [tonnesAnswer, gradeAnswer], working: ['tonnes × grade, outcome by outcome'],
    }),
    outcomes: { tonnes, ounces },
  }
}

const middle = (values: Float64Array) => quantile([...values].sort((a, b) => a - b), 0.5)

interface About {
  readonly id: string
  readonly because: readonly string[]
  readonly assumed: readonly AssumedFigure[]
  readonly from: readonly string[]
  readonly parts?: Heap['grade']['parts']
  readonly working: readonly string[]
}

const middleAnswer = (values: Float64Array, unit: string, sentence: string, { because, working, ...about }: About) => buildAnswer({
  ...about, value: middle(values), unit, sentence, range: rangeOf([...values], because), cautions: [notResource],
  method: { name: 'volume × loose density × sampled grade', page: 'heaps', working: [...working, `${outcomesDrawn} outcomes, seed ${seed}`] },
})
