import type { NotEnough } from './answer.ts'
import type { SecondLook } from './second-look/second-look.ts'
import type { Grade, Heaps, LostPart, Pay, VeinAt, Workings } from './shapes.ts'

/** Everything that can be asked. A part that can't be said yet says what is missing. */
export interface Reckoned {
  readonly workings: Workings | NotEnough
  readonly vein: VeinAt | NotEnough
  /** Where the vein goes on past the fault. */
  readonly lostPart: LostPart | NotEnough
  readonly grade: Grade | NotEnough
  /** What the heaps of broken rock hold: gob, dumps, muck and tailings. */
  readonly heaps: Heaps | NotEnough
  readonly pay: Pay | NotEnough
  /** What does not fit the rest and wants looking at again. */
  readonly secondLooks: readonly SecondLook[]
}

export type PartName = keyof Reckoned
