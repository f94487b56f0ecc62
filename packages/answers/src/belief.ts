import type { Answer } from './answer.ts'

/** What the crew may believe of one bag's grade, all its pans and assays together. */
export interface Belief {
  readonly bag: string
  /** Best single figure, the median; g/t. */
  readonly grade: number
  /** Mean, g/t: what to add up when gold is counted. Above the median, the more so the greater the doubt. */
  readonly mean: number
  /** What the looks alone say, no prior with it: mean and standard deviation of ln(g/t). */
  readonly logMean: number
  readonly logSd: number
  readonly low: number
  readonly high: number
  /** Nothing was found: `grade` is the middle of what may still be there. */
  readonly below: boolean
  readonly answer: Answer
}
