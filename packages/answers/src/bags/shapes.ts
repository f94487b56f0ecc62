import type { Answer } from '../answer.ts'

/** What the record of bags does not account for. */
export interface BagFault {
  readonly sort: 'used twice' | 'skipped' | 'never seen again' | 'no result' | 'result without a bag' | 'custody'
  readonly bags: readonly string[]
  readonly sentence: string
  readonly todo: string
  readonly entries: readonly string[]
}

/** A roll of labels and how far it is used; `entry` is '' for a run of numbers that no roll explains. */
export interface RollUse {
  readonly entry: string
  readonly name: string
  readonly prefix: string
  readonly first: string
  readonly last: string
  readonly used: number
  readonly skipped: readonly string[]
  /** The number that comes next; '' when the roll is used up. */
  readonly next: string
  readonly left: number
}

/** One stage of a bag's way. */
export interface BagStep {
  readonly entry: string
  readonly kind: string
  readonly act: string
  readonly says: string
  readonly who: string
  readonly when: string
  readonly seal: string
  readonly intact: string
  readonly to: string
}

/** A bag with what was taken from it. */
export interface BagTree {
  readonly bag: string
  readonly entry: string
  readonly says: string
  /** 'sample', 'duplicate', 'split', 'pan', 'assay' or 'kept'. */
  readonly is: string
  readonly of: readonly BagTree[]
}

/** A bag of the book: its way from the wall, and what became of it. */
export interface BagAt {
  readonly bag: string
  readonly entry: string
  readonly kind: string
  readonly fate: 'panned' | 'assayed' | 'sent' | 'kept' | 'split' | 'tested' | 'not seen again'
  readonly steps: readonly BagStep[]
  /** What in its way can't be accounted for. */
  readonly gaps: readonly string[]
}

/** The record of all bags: numbers, ways and gaps. */
export interface Bags {
  readonly sentence: string
  readonly figures: readonly Answer[]
  readonly rolls: readonly RollUse[]
  /** The gravest first. */
  readonly faults: readonly BagFault[]
  readonly bags: readonly BagAt[]
  /** Bags that were split or doubled, as trees. */
  readonly trees: readonly BagTree[]
  readonly cautions: readonly string[]
}
