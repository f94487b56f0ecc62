import { notEnoughOf } from '../../answer.ts'
import { groundSample } from '../../grade/grade.ts'
import { priors } from '../../grade/outcomes.ts'
import { studyOf } from '../../grade/study.ts'
import { notEnough } from '../../answer.ts'
import type { Graph } from '../graph.ts'
import { gradeGround } from './grade.ts'

/** What stands beside the headline of grade; worked out after it, so that the headline need not wait. */
export const gradeStudy = (g: Graph) => g.node('grade study', () => {
  const grade = g.part('grade'), found = g.vein.value
  if (notEnough(grade)) return grade
  if (notEnough(found)) return notEnoughOf(found.sentence, found.wanted)
  const used = grade.samples.filter(s => s.used), { accumulation, assumed } = priors(g.assume.value)
  return studyOf({
    used, data: used.map(s => groundSample(s, g.beliefs.value.get(s.bag)!, found)), ground: gradeGround(g).value!, panels: grade.panels,
    density: g.assume.value('vein density'), prior: accumulation, assumed, units: g.units.value,
  })
})
