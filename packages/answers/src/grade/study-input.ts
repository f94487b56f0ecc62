import type { FieldPrior } from '@lodebook/reckon/estimate'
import type { AssumedFigure } from '../assumptions.ts'
import type { CrewUnits } from '../words.ts'
import type { GroundAt } from './ground-at.ts'
import type { GroundSample } from './outcomes.ts'
import type { Panel, SampleAt } from './shapes.ts'

/** What the study of an estimate is made from. */
export interface StudyInput {
  readonly used: readonly SampleAt[]
  /** The same samples as logs with their errors. */
  readonly data: readonly GroundSample[]
  readonly ground: GroundAt
  readonly panels: readonly Panel[]
  readonly density: AssumedFigure
  readonly prior: FieldPrior
  readonly assumed: readonly AssumedFigure[]
  readonly units: CrewUnits
}
