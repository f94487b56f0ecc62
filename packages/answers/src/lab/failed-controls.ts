import { touchedBy } from '@lodebook/reckon/assay'
import type { RunPlace } from '@lodebook/reckon/assay'
import { buildAnswer } from '../build-answer.ts'
import { textOf } from '../read.ts'
import { plural } from '../words.ts'
import type { Run } from './batch.ts'
import type { BlankRun, FailedControl, StandardChart } from './shapes.ts'

/** Which bags each failed blank and standard puts in question, batch by batch, and what to ask of the laboratory. */
export function failedControls(runs: readonly Run[], blanks: readonly BlankRun[], charts: readonly StandardChart[]): readonly FailedControl[] {
  const verdicts = new Map<string, boolean>([
    ...blanks.map(b => [b.entry, !b.failed] as const), ...charts.flatMap(c => c.runs.map(r => [r.entry, !r.rejected] as const)),
  ])
  return [...new Set(runs.map(r => r.certificate))].flatMap((certificate) => {
    const batch = runs.filter(r => r.certificate === certificate)
    const places = batch.map((r): RunPlace => {
      const passed = verdicts.get(r.assay.id)
      return passed === undefined ? {} : { control: { sort: r.role === 'standard' ? textOf(r.sample!, 'standard')! : r.role, passed } }
    })
    return places.flatMap((place, i): FailedControl[] => {
      if (!place.control || place.control.passed) return []
      const touched = touchedBy(places, i).map(at => batch[at]!), run = batch[i]!, sort = run.role === 'blank' ? 'blank' as const : 'standard' as const
      const bags = [...new Set(touched.map(t => t.bag))]
      return [{
        sort, bag: run.bag, certificate, touched: bags,
        answer: buildAnswer({
          id: `lab.failed.${run.bag}`, value: bags.length, unit: 'bags',
          sentence: bags.length === 0 ? `${sort === 'blank' ? 'Blank' : 'Standard'} ${run.bag} failed, with no bag of ours between it and controls that passed.`
            : `${sort === 'blank' ? 'Blank' : 'Standard'} ${run.bag} failed in ${certificate || 'its batch'}: ask the laboratory to run ${plural(bags.length, 'bag')} again, ${bags.slice(0, 12).join(', ')}${bags.length > 12 ? ' and more' : ''}.`,
          method: { name: 'from the last control of its sort that passed to the next that did', page: 'assay-checks', working: [`${sort} ${run.bag} stands at place ${i + 1} of ${batch.length}`] },
          from: [run.assay.id, ...touched.map(t => t.assay.id)],
        }),
      }]
    })
  })
}
