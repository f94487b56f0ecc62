import type { Entry } from '@lodebook/book'
import { controlChart } from '@lodebook/reckon/assay'
import { buildAnswer } from '../build-answer.ts'
import { quantityOf, textOf, valueOf } from '../read.ts'
import { figure, grade as gradeWords, plural } from '../words.ts'
import type { CrewUnits } from '../words.ts'
import { limitOf, shownGrade } from './batch.ts'
import type { Run } from './batch.ts'
import type { BlankRun, StandardChart, StandardRun } from './shapes.ts'

/** A blank may show so many times the laboratory's own limit. Common practice runs from 5 to 10; no source. */
const blankTimes = 5

/** What each rule of the control chart says in plain words. */
export const ruleWords: Readonly<Record<string, string>> = {
  '1_2s': 'beyond two standard deviations: look again', '1_3s': 'beyond three standard deviations', '2_2s': 'two in a row beyond two on one side',
  R_4s: 'one beyond two above and the next beyond two below', '4_1s': 'four in a row beyond one on one side', '10_x': 'ten in a row on one side',
}

/** Each standard's runs on its control chart, in the order in which they were run. */
export function standardCharts(runs: readonly Run[], standards: readonly Entry[], units: CrewUnits): readonly StandardChart[] {
  return standards.flatMap((standard): StandardChart[] => {
    const name = textOf(standard, 'name')!, certified = valueOf(standard, 'gold'), sd = valueOf(standard, 'deviation')
    const own = runs.filter(r => r.role === 'standard' && textOf(r.sample!, 'standard') === name && shownGrade(r.assay))
    if (certified === undefined || sd === undefined || !(sd > 0) || own.length === 0) return []
    const values = own.map(r => shownGrade(r.assay)!.value), { z, breaches } = controlChart(certified, sd, values)
    const points = own.map((run, i): StandardRun => {
      const here = breaches.filter(b => b.at === i), rejected = here.some(b => !b.warning)
      return {
        entry: run.assay.id, bag: run.bag, certificate: run.certificate, value: values[i]!, z: z[i]!, rules: here.map(b => b.rule), rejected,
        answer: buildAnswer({
          id: `lab.standard.${name}.${run.bag}`, value: z[i]!, unit: 'standard deviations',
          sentence: `${name} in bag ${run.bag} ran ${quantityOf(run.assay, 'gold')!.text}: ${figure(Math.abs(z[i]!), 2)} standard deviations ${z[i]! < 0 ? 'below' : 'above'} its certificate.`,
          method: {
            name: 'control chart of a certified standard', page: 'assay-checks',
            working: [`(${figure(values[i]!)} − ${figure(certified)}) / ${figure(sd, 2)} = ${figure(z[i]!, 2)}`, ...here.map(b => `${b.rule}: ${ruleWords[b.rule]!}`)],
          },
          sources: ['Control rules after Westgard, as in PMC3909142, table 1 (read)'], from: [run.assay.id, ...(run.sample ? [run.sample.id] : []), standard.id],
        }),
      }
    })
    const bad = points.filter(p => p.rejected)
    return [{
      name, certified, sd, runs: points,
      sentence: bad.length === 0 ? `${name}, certified at ${gradeWords(certified, units)}: ${plural(points.length, 'run')}, none of them more than chance.`
        : `${name}, certified at ${gradeWords(certified, units)}: ${bad.length} of ${plural(points.length, 'run')} out of control (${[...new Set(bad.map(b => b.bag))].join(', ')}).`,
    }]
  })
}

/** Every blank in the order in which it was run, with what ran before it. */
export function blankRuns(runs: readonly Run[], assays: readonly Entry[], units: CrewUnits): readonly BlankRun[] {
  return runs.flatMap((run, i): BlankRun[] => {
    const shown = shownGrade(run.assay)
    if (run.role !== 'blank' || !shown) return []
    const limit = limitOf(assays.filter(a => textOf(a, 'laboratory') === textOf(run.assay, 'laboratory'))), allowed = blankTimes * limit
    const previous = runs[i - 1], ranBefore = previous?.certificate === run.certificate ? shownGrade(previous.assay) : undefined
    const before = previous && ranBefore ? { bag: previous.bag, grade: ranBefore.value, says: quantityOf(previous.assay, 'gold')!.text } : undefined
    const failed = !shown.below && shown.value > allowed
    return [{
      entry: run.assay.id, bag: run.bag, certificate: run.certificate, value: shown.value, below: shown.below, allowed, failed, before,
      answer: buildAnswer({
        id: `lab.blank.${run.bag}`, value: shown.value, unit: 'g/t',
        sentence: failed
          ? `Blank ${run.bag} ran ${quantityOf(run.assay, 'gold')!.text}, ${figure(shown.value / limit, 2)} times the laboratory's limit${before ? `; ${before.bag}, run before it, ran ${before.says}` : ''}: gold was carried over, or bags were changed.`
          : `Blank ${run.bag} ran ${quantityOf(run.assay, 'gold')!.text}: within what a blank may show, ${gradeWords(allowed, units)}.`,
        method: { name: 'a barren sample run among the others', page: 'assay-checks', working: [`a blank may show ${blankTimes} times the limit of ${gradeWords(limit, units)}`,
          ...(before && failed ? [`carried over: ${figure(100 * shown.value / before.grade, 2)} % of what ran before it`] : [])] },
        from: [run.assay.id, ...(run.sample ? [run.sample.id] : []), ...(previous && before ? [previous.assay.id] : [])],
      }),
    }]
  })
}
