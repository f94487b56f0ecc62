import type { Entry } from '@lodebook/book'
import type { VeinPoint } from '@lodebook/reckon'
import type { NotEnough } from '../answer.ts'
import type { Assume } from '../assumptions.ts'
import type { Belief } from '../belief.ts'
import type { Grade, LostPart } from '../shapes.ts'
import type { CrewUnits } from '../words.ts'

/** All that the judging of options rests on. */
export interface PayInput {
  readonly grade: Grade
  readonly lostPart: LostPart | NotEnough
  readonly samples: readonly Entry[]
  readonly beliefs: ReadonlyMap<string, Belief>
  readonly options: readonly Entry[]
  readonly work: readonly Entry[]
  readonly costs: readonly Entry[]
  readonly prices: readonly Entry[]
  readonly pans: readonly Entry[]
  readonly mine: Entry | undefined
  /** Where a place written in an entry lies on the vein, or why that can't be said. */
  readonly placeOnVein: (entry: Entry, field: string) => VeinPoint | string
  readonly assume: Assume
  readonly units: CrewUnits
}
