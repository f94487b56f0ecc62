import type { Answer } from '../answer.ts'

/** One thing that may go with gold, with what the bags say of it. */
export interface Association {
  readonly name: string
  /** 'iron stain against the rest', 'thicker against thinner'. */
  readonly asks: string
  readonly says: 'more gold' | 'less gold' | 'no difference told' | 'not enough to say'
  readonly sentence: string
  /** How many times as much gold as the others; undefined when nothing was found in too many bags to tell. */
  readonly ratio: Answer | undefined
  /** 80 % range of the ratio; infinite or zero where it is open. */
  readonly low: number
  readonly high: number
  /** Kendall's tau where something was measured. */
  readonly tau?: number
  readonly withIt: number
  readonly without: number
  /** Chance if it had nothing to do with gold, and the same raised for all that was asked (Holm); undefined when it was not asked. */
  readonly p: number | undefined
  readonly raised: number | undefined
}

/** What goes with gold. */
export interface Associations {
  readonly sentence: string
  /** What stands out first. */
  readonly of: readonly Association[]
  readonly bags: number
  readonly cautions: readonly string[]
}
