import type { ReadonlySignal } from '@preact/signals-core'
import type { Reckoned } from '../../reckoned.ts'
import type { Graph } from '../graph.ts'
import { associations } from './associations.ts'
import { bags } from './bags.ts'
import { finds } from './finds.ts'
import { access } from './access.ts'
import { grade } from './grade.ts'
import { gradeStudy } from './grade-study.ts'
import { heaps } from './heaps.ts'
import { lab } from './lab.ts'
import { lostPart } from './lost-part.ts'
import { openings } from './openings.ts'
import { next } from './next.ts'
import { pay } from './pay.ts'
import { samplePlan } from './sample-plan.ts'
import { readings } from './readings.ts'
import { secondLooks } from './second-looks.ts'
import { breathing } from './breathing.ts'
import { ground } from './ground.ts'
import { today } from './today.ts'
import { vein } from './vein.ts'
import { veinSheet } from './vein-sheet.ts'
import { workings } from './workings.ts'

/** How each part of the answers is made. */
export const makers: { readonly [P in keyof Reckoned]: (graph: Graph) => ReadonlySignal<Reckoned[P]> } = {
  today,
  access,
  breathing,
  ground,
  workings,
  readings,
  openings,
  vein,
  veinSheet,
  lostPart,
  finds,
  bags,
  samplePlan,
  associations,
  lab,
  grade,
  gradeStudy,
  heaps,
  pay,
  next,
  secondLooks,
}
