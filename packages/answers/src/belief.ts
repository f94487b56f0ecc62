import type { Answer } from './answer.ts'

/** What the crew may believe of one bag's grade, all its pans and assays together. */
export interface Belief {
  readonly bag: string
  /** Best single figure, g/t. */
  readonly grade: number
  readonly logMean: number
  readonly logSd: number
  readonly low: number
  readonly high: number
  /** Nothing was found: `grade` is the middle of what may still be there. */
  readonly below: boolean
  readonly answer: Answer
}
