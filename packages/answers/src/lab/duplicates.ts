import type { Entry } from '@lodebook/book'
import { duplicateMeasures, expectedSpread, precisionModel } from '@lodebook/reckon/assay'
import { buildAnswer, quantile } from '../build-answer.ts'
import { numberOf, textOf } from '../read.ts'
import { figure, plural } from '../words.ts'
import type { BaggedLooks } from './beliefs.ts'
import { bagOf } from './looks.ts'
import type { Look } from './looks.ts'
import type { DuplicatePair, DuplicatesAt, DuplicateStage } from './shapes.ts'

const stages: readonly { readonly stage: DuplicateStage, readonly says: string }[] = [
  { stage: 'field', says: 'cut twice at one place' }, { stage: 'crush', says: 'split twice from one crushed bag' },
  { stage: 'pulp', says: 'run twice by one laboratory' }, { stage: 'other laboratory', says: 'run by two laboratories' },
]

/** Duplicates by the stage at which they part, each pair beside what theory expects of it. */
export function duplicatesBy(bagged: BaggedLooks, samples: readonly Entry[]): readonly DuplicatesAt[] {
  const pairs = [...fieldPairs(bagged, samples), ...assayPairs(bagged)]
  return stages.flatMap(({ stage, says }): DuplicatesAt[] => {
    const own = pairs.filter(p => p.stage === stage)
    if (own.length === 0) return []
    const values = own.map(p => [p.a.grade, p.b.grade] as const), { cvAveragePct } = duplicateMeasures(values), model = precisionModel(values)
    const expectedPct = 100 * quantile(own.map(p => p.expected).sort((x, y) => x - y), 0.5)
    const wide = cvAveragePct > 1.5 * expectedPct && own.length >= 4
    const sentence = `${plural(own.length, 'pair')} ${says}: they part by ${figure(cvAveragePct, 2)} % (average coefficient of variation); by the count of grains alone half of them would part by more than ${figure(expectedPct, 2)} %${wide ? ', so something else parts them as well' : ''}.`
    return [{
      stage, pairs: own, expectedPct, model: model && { s0: model.s0, k: model.k }, sentence,
      cv: buildAnswer({
        id: `lab.duplicates.${stage.replace(' ', '-')}`, value: cvAveragePct, unit: '%', sentence, parts: own.map(p => p.answer),
        method: {
          name: 'average coefficient of variation of pairs', page: 'assay-checks',
          working: [`100 √(2/${own.length} Σ ((a − b)/(a + b))²) = ${figure(cvAveragePct, 3)} %`,
            ...(model ? [`error grows with grade as ${figure(model.s0, 2)} + ${figure(model.k, 2)} × grade g/t, from ${model.groups} groups of eleven`] : ['fewer than 33 pairs: no line of error against grade'])],
        },
        sources: ['Abzalov, Explor. Min. Geol. 17, 2008, 131 (from memory)', 'Thompson and Howarth; constants as in Stanley and Lawie 2007 (read)'],
      }),
    }]
  })
}

interface Determined { readonly bag: string, readonly look: Look }

function pairOf(stage: DuplicateStage, a: Determined, b: Determined): DuplicatePair | undefined {
  const [x, y] = [gradeOf(a.look), gradeOf(b.look)]
  if (x === undefined || y === undefined || x + y === 0) return undefined
  const middle = (x + y) / 2, hard = Math.abs(x - y) / (x + y), shown = Math.SQRT2 * hard
  const expected = Math.sqrt([a, b].reduce((sum, { look: { look } }) => sum + expectedSpread(look, middle) ** 2, 0) / 2)
  return {
    stage, a: { bag: a.bag, entry: a.look.entry.id, grade: x }, b: { bag: b.bag, entry: b.look.entry.id, grade: y }, hard, shown, expected,
    answer: buildAnswer({
      id: `lab.pair.${a.bag}.${b.bag}.${a.look.entry.id}`, value: 100 * hard, unit: '%',
      sentence: `${a.bag}: ${a.look.says}; ${b.bag}: ${b.look.says}. Half their difference is ${figure(100 * hard, 2)} % of their mean; a pair as unlike as theory makes them on average shows ${figure(100 * expected / Math.SQRT2, 2)} %.`,
      method: { name: 'half absolute relative difference', page: 'assay-checks', working: [`|${figure(x)} − ${figure(y)}| / (${figure(x)} + ${figure(y)}) = ${figure(hard, 2)}`,
        `${[a, b].map(({ look: { look } }) => `${figure(look.mass, 3)} g with grains of ${figure(look.grain, 2)} mg`).join(' and ')}: ${figure(100 * expected, 2)} % each`] },
      from: [a.look.entry.id, b.look.entry.id],
    }),
  }
}

/** A figure to compare, with recovery put right; none for limits, which say nothing of how two agree. */
const gradeOf = ({ look }: Look): number | undefined => 'grade' in look.found ? look.found.grade / look.recovery : undefined

/** A duplicate from the wall beside the bag it doubles: assay with assay where both have one, else pan with pan. */
function fieldPairs({ looks }: BaggedLooks, samples: readonly Entry[]): readonly DuplicatePair[] {
  return samples.filter(s => textOf(s, 'role') === 'duplicate').flatMap((twin) => {
    const of = textOf(twin, 'duplicateOf') ?? '', [mine, theirs] = [looks.get(bagOf(twin)) ?? [], looks.get(of) ?? []]
    return (['assay', 'pan'] as const).flatMap((kind) => {
      const [a, b] = [theirs.find(l => l.entry.kind === kind), mine.find(l => l.entry.kind === kind)]
      return a && b ? pairOf('field', { bag: of, look: a }, { bag: bagOf(twin), look: b }) ?? [] : []
    })
  })
}

/** Assays of one bag: of one split by one laboratory, of one split by two, or of two splits. Each is held against the first of its bag. */
function assayPairs({ looks }: BaggedLooks): readonly DuplicatePair[] {
  return [...looks.values()].flatMap((list) => {
    const assays = list.filter(l => l.entry.kind === 'assay').sort((a, b) => (numberOf(a.entry, 'repeat') ?? 0) - (numberOf(b.entry, 'repeat') ?? 0))
    const [first, ...rest] = assays
    return rest.flatMap((other) => {
      const sameBag = bagOf(other.entry) === bagOf(first!.entry), sameLab = textOf(other.entry, 'laboratory') === textOf(first!.entry, 'laboratory')
      const stage: DuplicateStage = !sameLab ? 'other laboratory' : sameBag ? 'pulp' : 'crush'
      return pairOf(stage, { bag: bagOf(first!.entry), look: first! }, { bag: bagOf(other.entry), look: other }) ?? []
    })
  })
}
