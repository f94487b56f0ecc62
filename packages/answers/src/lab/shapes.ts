import type { Answer, NotEnough } from '../answer.ts'

/** One look at a bag, as it is listed beside the others. Grades are g/t, pans with their recovery put right. */
export interface LookAt {
  readonly entry: string
  readonly kind: 'pan' | 'assay'
  /** As it was written: '0.31 oz/ton', '3 colours in 4 kg'. */
  readonly says: string
  /** The bag or split that was looked at. */
  readonly bag: string
  readonly grade: number
  readonly mark: 'below' | 'above' | undefined
}

/** One sample with all its looks and the one belief that they make together. */
export interface LabSample {
  readonly bag: string
  readonly entry: string | undefined
  readonly role: string
  readonly method: string
  readonly looks: readonly LookAt[]
  readonly grade: number
  readonly low: number
  readonly high: number
  readonly below: boolean
  /** The bag it doubles, or the bags that double it. */
  readonly doubles: readonly string[]
  /** Why it should be run again, in short; none where nothing speaks against it. */
  readonly doubts: readonly string[]
  readonly answer: Answer
}

/** One run of a standard. */
export interface StandardRun {
  readonly entry: string
  readonly bag: string
  readonly certificate: string
  /** g/t. */
  readonly value: number
  /** Standard deviations from the certified value. */
  readonly z: number
  /** Rules met here; a warning alone is '1_2s'. */
  readonly rules: readonly string[]
  readonly rejected: boolean
  readonly answer: Answer
}

export interface StandardChart {
  readonly name: string
  readonly certified: number
  readonly sd: number
  /** In the order in which they were run. */
  readonly runs: readonly StandardRun[]
  readonly sentence: string
}

export interface BlankRun {
  readonly entry: string
  readonly bag: string
  readonly certificate: string
  /** g/t; the limit where it ran below it. */
  readonly value: number
  readonly below: boolean
  /** What it may show, g/t. */
  readonly allowed: number
  readonly failed: boolean
  /** The sample that was run before it. */
  readonly before: { readonly bag: string, readonly grade: number, readonly says: string } | undefined
  readonly answer: Answer
}

export type DuplicateStage = 'field' | 'crush' | 'pulp' | 'other laboratory'

/** Two determinations that ought to agree. */
export interface DuplicatePair {
  readonly stage: DuplicateStage
  readonly a: { readonly bag: string, readonly entry: string, readonly grade: number }
  readonly b: { readonly bag: string, readonly entry: string, readonly grade: number }
  /** |a - b|/(a + b). */
  readonly hard: number
  /** Relative standard deviation of one, as the two show it and as theory expects it at their mean. */
  readonly shown: number
  readonly expected: number
  readonly answer: Answer
}

export interface DuplicatesAt {
  readonly stage: DuplicateStage
  readonly pairs: readonly DuplicatePair[]
  /** Average coefficient of variation, per cent. */
  readonly cv: Answer
  /** The same as theory expects it, per cent. */
  readonly expectedPct: number
  /** How error grows with grade, where there are enough pairs: s0 + k c, g/t. */
  readonly model: { readonly s0: number, readonly k: number } | undefined
  readonly sentence: string
}

/** Theory's relative standard deviation of one determination against grade. */
export interface ExpectedCurve { readonly name: string, readonly points: readonly { readonly grade: number, readonly relativeSd: number }[] }

export interface PlottedSample { readonly bag: string, readonly grade: number, readonly score: number, readonly share: number, readonly answer: Answer }

/** A bag both panned and assayed, g/t; the pan as it showed, recovery not put right. */
export interface PanAndAssayAt {
  readonly bag: string
  readonly pan: number
  readonly assay: number
  /** One standard deviation of the natural logs. */
  readonly panSd: number
  readonly assaySd: number
  readonly panner: string
  readonly material: string
  readonly answer: Answer
}

/** How pans stand to assays for one panner, one material, or all. */
export interface PanLine {
  readonly of: string
  readonly pairs: number
  /** Of ln pan against ln assay. */
  readonly intercept: number
  readonly slope: number
  readonly answer: Answer
}

export interface PansAgainstAssays {
  readonly points: readonly PanAndAssayAt[]
  /** Pairs with a limit on one side: they count in the recovery, not on the line. */
  readonly limited: number
  readonly lines: readonly PanLine[]
  /** Recovery by panner, the pans of all together first. */
  readonly recovery: readonly Answer[]
  readonly sentence: string
}

/** A control that failed and what it puts in question. */
export interface FailedControl {
  readonly sort: 'blank' | 'standard'
  readonly bag: string
  readonly certificate: string
  readonly touched: readonly string[]
  readonly answer: Answer
}

export interface NextBatch {
  readonly places: readonly { readonly what: 'bag' | 'blank' | 'standard' | 'duplicate', readonly name: string, readonly why: string }[]
  readonly sentence: string
}

/** Two bags that may have been changed over. */
export interface SwapSuspicion {
  readonly bags: readonly [string, string]
  /** How many times likelier what was found is with the two changed over. */
  readonly ratio: number
  readonly answer: Answer
}

/** What was found, and whether it can be believed. */
export interface Lab {
  readonly sentence: string
  readonly figures: readonly Answer[]
  readonly samples: readonly LabSample[]
  readonly standards: readonly StandardChart[]
  readonly blanks: readonly BlankRun[]
  readonly duplicates: readonly DuplicatesAt[]
  readonly expected: readonly ExpectedCurve[]
  readonly plotted: readonly PlottedSample[]
  readonly pans: PansAgainstAssays | NotEnough
  readonly failed: readonly FailedControl[]
  readonly swaps: readonly SwapSuspicion[]
  /** What the search for changed bags could have seen at all. */
  readonly swapSentence: string
  readonly nextBatch: NextBatch
  readonly densities: readonly Answer[]
  readonly certificates: readonly { readonly entry: string, readonly name: string, readonly kept: boolean, readonly assays: number }[]
  readonly cautions: readonly string[]
}
