import type { Making } from './making.ts'
import { air } from './measure/air.ts'
import { assays } from './measure/assays.ts'
import { custody } from './measure/custody.ts'
import { densityTests } from './measure/density.ts'
import { entering } from './measure/entering.ts'
import { digging } from './measure/digging.ts'
import { ground } from './measure/ground.ts'
import { gobMeasured } from './measure/gob-measured.ts'
import { headings } from './measure/headings.ts'
import { crushAndPan } from './measure/lab.ts'
import { mineAndTools } from './measure/mine.ts'
import { money } from './measure/money.ts'
import { narrowing } from './measure/narrowing.ts'
import { options } from './measure/options.ts'
import { relics } from './measure/relics.ts'
import { samplePlan, takeSamples, type SamplePlan } from './measure/sampling.ts'
import { secondThoughts } from './measure/second-thoughts.ts'
import { shifts } from './measure/shifts.ts'
import { structure } from './measure/structure.ts'
import { survey } from './measure/survey.ts'
import { sweeps } from './measure/sweeps.ts'
import { targets } from './measure/targets.ts'
import { ties } from './measure/ties.ts'
import { widths } from './measure/widths.ts'

/** Everything the crew does and writes from April to October 2026. */
export function season(making: Making, samples: number): void {
  const plan = samplePlan(samples)
  mineAndTools(making)
  survey(making)
  ties(making)
  headings(making)
  structure(making)
  widths(making)
  targets(making)
  takeSamples(making, plan)
  assays(making, crushAndPan(making, sentToAssay(making, plan)))
  densityTests(making)
  gobMeasured(making)
  relics(making)
  air(making)
  ground(making)
  shifts(making)
  digging(making)
  money(making)
  entering(making)
  options(making)
  secondThoughts(making)
  sweeps(making)
  narrowing(making)
  custody(making)
}

/** Four assays for every seven samples, blanks and standards among them: the duplicates with the bags they double, then bags by lot. */
function sentToAssay(making: Making, plan: SamplePlan): Set<string> {
  const all = [...making.bags.values()], total = all.length + plan.blank + plan.standard
  const splits = Math.max(0, Math.round(total * 4 / 7) - plan.blank - plan.standard)
  const doubled = making.diary.notes.flatMap(({ draft: { set } }) => set.duplicateOf === undefined ? [] : [set.duplicateOf as string, set.bag as string])
  const rest = making.numbers('for assay').shuffle(all.filter(b => b.vein !== undefined && !doubled.includes(b.bag))).map(b => b.bag)
  return new Set([...doubled, ...rest].slice(0, splits))
}
