import type { NotEnough } from './answer.ts'
import type { Grade, Pay, VeinAt, Workings } from './shapes.ts'

/** Everything this stage answers. A part that can't be said yet says what is missing. */
export interface Reckoned {
  readonly workings: Workings | NotEnough
  readonly vein: VeinAt | NotEnough
  readonly grade: Grade | NotEnough
  readonly pay: Pay | NotEnough
}
