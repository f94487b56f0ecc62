import type { Entry } from '@lodebook/book'
import { expectedSpread } from '@lodebook/reckon/assay'
import { plottingPositions } from '@lodebook/reckon/statistics'
import type { NotEnough } from '../answer.ts'
import type { Assume } from '../assumptions.ts'
import type { Belief } from '../belief.ts'
import { textOf } from '../read.ts'
import { figure } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { runOrder } from './batch.ts'
import type { BaggedLooks } from './beliefs.ts'
import { benchCautions } from './cautions.ts'
import { blankRuns, standardCharts } from './controls.ts'
import type { MaterialDensity } from './densities.ts'
import { duplicatesBy } from './duplicates.ts'
import { failedControls } from './failed-controls.ts'
import { labSamples } from './lab-samples.ts'
import { nextBatch } from './next-batch.ts'
import { pansAgainstAssays } from './pans-against-assays.ts'
import { labFigures, labSentence } from './said.ts'
import type { ExpectedCurve, Lab, LabSample, PlottedSample } from './shapes.ts'
import type { Swaps } from './swapped-bags.ts'

export interface LabInput {
  readonly of: (kind: string) => readonly Entry[]
  readonly bagged: BaggedLooks
  readonly beliefs: ReadonlyMap<string, Belief>
  readonly swaps: Swaps
  readonly densities: readonly MaterialDensity[]
  readonly assume: Assume
  readonly units: CrewUnits
}

/** What it ran, and whether that can be believed. */
export function labOf({ of, bagged, beliefs, swaps, densities, assume, units }: LabInput): Lab | NotEnough {
  const samples = of('sample'), assays = of('assay'), standards = of('standard'), cautions = benchCautions(of('pan'))
  if (beliefs.size === 0) {
    return {
      notEnough: true, cautions, sentence: 'No pan and no assay is written yet: there is nothing to believe or to doubt.',
      wanted: [{ kind: 'pan', why: 'a pan of one bag: what it weighed dry, and the colours or the gold' }, { kind: 'assay', why: 'a laboratory\'s result, or its whole file under Book' }],
    }
  }
  const runs = runOrder(samples, assays, bagged.root)
  const charts = standardCharts(runs, standards, units), blanks = blankRuns(runs, assays, units), failed = failedControls(runs, blanks, charts)
  const rock = labSamples({ samples, looks: bagged.looks, beliefs, failed, swaps: swaps.found, root: bagged.root })
  const duplicates = duplicatesBy(bagged, samples), pans = pansAgainstAssays(bagged, samples, assume, units)
  return {
    sentence: labSentence({ rock, charts, blanks, duplicates, swaps: swaps.found, units }), figures: labFigures({ rock, charts, blanks, bagged }),
    samples: rock, standards: charts, blanks, duplicates, expected: expectedCurves(bagged, assume), plotted: plotted(rock), pans, failed,
    swaps: swaps.found, swapSentence: swaps.sentence, densities: densities.map(d => d.answer), cautions,
    nextBatch: nextBatch({ samples, splits: of('split'), assays, standards, beliefs, root: bagged.root }),
    certificates: certificatesOf(of('certificate'), assays),
  }
}

/** What theory lets one assay and one pan of the usual size be worth, over grades from a tenth to a thousand grams a tonne. */
function expectedCurves({ looks, grain, recoveries }: BaggedLooks, assume: Assume): readonly ExpectedCurve[] {
  const all = [...looks.values()].flat(), grades = Array.from({ length: 41 }, (_, i) => 10 ** (-1 + i / 10))
  const typical = (kind: string) => {
    const masses = all.filter(l => l.entry.kind === kind).map(l => l.look.mass).sort((a, b) => a - b)
    return masses[Math.floor(masses.length / 2)]
  }
  const [charge, pan] = [typical('assay'), typical('pan')], { share, relativeSd } = recoveries.all
  const curve = (name: string, mass: number, recovery: number, sd: number): ExpectedCurve =>
    ({ name, points: grades.map(grade => ({ grade, relativeSd: expectedSpread({ mass, grain, recovery, relativeSd: sd }, grade) })) })
  return [
    ...(charge === undefined ? [] : [curve(`an assay of ${figure(charge, 2)} g`, charge, 1, assume('assay precision').value)]),
    ...(pan === undefined ? [] : [curve(`a pan of ${figure(pan / 1000, 2)} kg`, pan, share, relativeSd)]),
  ]
}

function plotted(rock: readonly LabSample[]): readonly PlottedSample[] {
  const own = rock.filter(s => s.role === 'ordinary')
  if (own.length === 0) return []
  return plottingPositions(own.map(s => ({ value: s.below ? s.high : s.grade, below: s.below })))
    .map(({ of, score, share }) => ({ bag: own[of]!.bag, grade: own[of]!.grade, score, share, answer: own[of]!.answer }))
}

/** The certificates that are kept as files, and those that assays name and nobody has put in. */
function certificatesOf(kept: readonly Entry[], assays: readonly Entry[]): Lab['certificates'] {
  const count = (name: string) => assays.filter(a => textOf(a, 'certificate') === name).length
  const named = [...new Set(assays.flatMap(a => textOf(a, 'certificate') ?? []))]
  return [
    ...kept.map(c => ({ entry: c.id, name: textOf(c, 'name')!, kept: c.fields['file'] !== undefined, assays: count(textOf(c, 'name')!) })),
    ...named.filter(name => !kept.some(c => textOf(c, 'name') === name)).map(name => ({ entry: '', name, kept: false, assays: count(name) })),
  ]
}
