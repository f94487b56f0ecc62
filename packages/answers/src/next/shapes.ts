import type { VeinPoint } from '@lodebook/reckon'
import type { Answer } from '../answer.ts'

/** A look that could be taken next. */
export interface NextLook {
  /** 1 for the best by what it is worth above its cost. */
  readonly rank: number
  readonly does: 'channel, panned' | 'channel, assayed' | 'assay' | 'heap sample, panned' | 'sweep'
  /** Where, in words: 'L9, 1.2 m toward L10'; or which bag or heap. */
  readonly where: string
  readonly at: VeinPoint | undefined
  readonly hours: number
  /** Fee and time together, money; of which the fee. */
  readonly cost: number
  readonly fee: number
  /** What it is worth to the choice, money. */
  readonly worth: Answer
  readonly net: number
  readonly perHour: number
  /** Worth for each unit of money that it costs. */
  readonly perMoney: number
}

/** Ground of which little is known and on which the choice leans. */
export interface BlindSpot { readonly panel: string, readonly at: VeinPoint, readonly sentence: string }

export interface Next {
  readonly sentence: string
  readonly currency: string
  /** Nothing is worth its cost. */
  readonly stop: boolean
  /** Between what is chosen, the best now first. */
  readonly choice: readonly string[]
  /** What knowing the ground for certain would be worth: no look is worth more. */
  readonly certainty: Answer
  /** Best first, at most forty. */
  readonly looks: readonly NextLook[]
  /** Looks to be taken together, in order: what each adds given those before it. */
  readonly batch: readonly { readonly look: NextLook, readonly adds: number }[]
  readonly blind: readonly BlindSpot[]
  readonly cautions: readonly string[]
}
