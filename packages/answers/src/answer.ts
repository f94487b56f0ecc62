/** A range that is to hold the true value with the stated probability, and where its width comes from. */
export interface AnswerRange {
  readonly low: number
  readonly high: number
  /** 0.8 for an 80 % range. */
  readonly confidence: number
  /** What makes it as wide as it is, widest first: 'coarse gold in small samples', 'few samples behind the fault'. */
  readonly because?: readonly string[]
}

export interface Method {
  readonly name: string
  /** The page under docs/methods/ that gives the formula and its limits. */
  readonly page: string
  /** The formula with this answer's own numbers in it, one line a step. */
  readonly working?: readonly string[]
}

/** Something taken as given. `entry` is the crew's own assumption entry when there is one; without it the figure is ours and can be overridden. */
export interface Assumed {
  readonly name: string
  readonly value: number | string
  readonly unit?: string
  readonly why: string
  readonly entry?: string
}

/**
 * A computed result with its range, its method and the entries behind it. Any figure shown anywhere is an Answer or a part of one,
 * so that it can be opened down to what was written.
 */
export interface Answer<T = number> {
  /** Stable name, such as `grade.ounces` or `workings.station.A7`. */
  readonly id: string
  /** In the crew's words. */
  readonly sentence: string
  readonly value: T
  readonly unit?: string
  readonly range?: AnswerRange
  readonly method: Method
  /** Published sources of the method and its constants. */
  readonly sources: readonly string[]
  /** Ids of the entries it rests on directly. */
  readonly from: readonly string[]
  /** Answers it rests on: one level down in the drawer. */
  readonly parts: readonly Answer<unknown>[]
  readonly assumed: readonly Assumed[]
  readonly cautions: readonly string[]
}

/** There is not enough to say, and this is what would tell. */
export interface NotEnough {
  readonly notEnough: true
  readonly sentence: string
  /** What to write down next, as kinds of entry with a reason. */
  readonly wanted: readonly { readonly kind: string, readonly why: string }[]
  readonly cautions: readonly string[]
}

export type AnswerOr<T = number> = Answer<T> | NotEnough
export const isAnswer = <T>(a: AnswerOr<T>): a is Answer<T> => !('notEnough' in a)

export const notEnoughOf = (sentence: string, wanted: NotEnough['wanted'], cautions: readonly string[] = []): NotEnough => ({ notEnough: true, sentence, wanted, cautions })
/** Whether a part of the answers says that there is too little to say. Takes any object, so that the compiler need not follow every part at once. */
export const notEnough = (said: object): said is NotEnough => 'notEnough' in said
