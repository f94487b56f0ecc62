import type { Access } from './access/index.ts'
import type { NotEnough } from './answer.ts'
import type { Associations } from './associations/shapes.ts'
import type { Bags } from './bags/shapes.ts'
import type { Finds } from './finds/shapes.ts'
import type { Lab } from './lab/shapes.ts'
import type { SamplePlanning } from './sampling/shapes.ts'
import type { Next } from './next/shapes.ts'
import type { SecondLook } from './second-look/second-look.ts'
import type { VeinSheet } from './vein/shapes.ts'
import type { Grade, GradeStudy, Heaps, LostPart, Pay, VeinAt, Workings } from './shapes.ts'
import type { Openings } from './sheet/openings.ts'
import type { SurveyReadings } from './survey/readings.ts'
import type { Breathing } from './today/breathing-shapes.ts'
import type { GroundSeen } from './today/ground-shapes.ts'
import type { Today } from './today/shapes.ts'

/** Everything that can be asked. A part that can't be said yet says what is missing. */
export interface Reckoned {
  /** What to look at before going in. Never whether to go. */
  readonly today: Today
  /** What it takes to get in and out properly. */
  readonly access: Access | NotEnough
  /** The ground: notes, classifications, blocks that joints cut loose. */
  readonly ground: GroundSeen
  /** How the workings get their air. */
  readonly breathing: Breathing | NotEnough
  readonly workings: Workings | NotEnough
  /** Every reading of the survey against the rest. */
  readonly readings: SurveyReadings | NotEnough
  /** How much room there is: volumes of headings and stopes, and cross sections. */
  readonly openings: Openings | NotEnough
  readonly vein: VeinAt | NotEnough
  /** What the vein does, how thick it is and what it is made of. */
  readonly veinSheet: VeinSheet | NotEnough
  /** Where the vein goes on past the fault. */
  readonly lostPart: LostPart | NotEnough
  /** What was found, where, and what swept ground was silent. */
  readonly finds: Finds | NotEnough
  /** Whether every bag can be accounted for: numbers, ways, gaps. */
  readonly bags: Bags | NotEnough
  /** How much to take, and how, for the crew's own material. */
  readonly samplePlan: SamplePlanning
  /** What goes with gold. */
  readonly associations: Associations | NotEnough
  /** What was found, and whether it can be believed. */
  readonly lab: Lab | NotEnough
  readonly grade: Grade | NotEnough
  /** What stands beside it: bunched samples, high values, how far the gold carries. */
  readonly gradeStudy: GradeStudy | NotEnough
  /** What the heaps of broken rock hold: gob, dumps, muck and tailings. */
  readonly heaps: Heaps | NotEnough
  readonly pay: Pay | NotEnough
  /** Where the next look does most good. */
  readonly next: Next | NotEnough
  /** What does not fit the rest and wants looking at again. */
  readonly secondLooks: readonly SecondLook[]
}

export type PartName = keyof Reckoned
