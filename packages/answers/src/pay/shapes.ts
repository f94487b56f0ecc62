import type { Answer } from '../answer.ts'

export interface Driver {
  readonly name: string
  readonly low: number
  readonly high: number
  /** The same in the crew's words. */
  readonly said: { readonly low: string, readonly high: string }
  /** Pay a person-day when this one is at its low or high (one in ten) and the rest are as they are. */
  readonly payAtLow: number
  readonly payAtHigh: number
  /** Where this one alone, the rest in the middle, brings a day to the wage to beat; undefined when no value of it does. */
  readonly pays: number | undefined
  readonly answer: Answer
}

/** Money in hand week by week, wages not counted: the middle and the 80 % range of the outcomes at the end of each week. */
export interface CashOverWeeks {
  readonly weeks: readonly number[]
  readonly low: readonly number[]
  readonly middle: readonly number[]
  readonly high: readonly number[]
  /** The deepest hole: money to be found before the gold pays it back. */
  readonly deepest: Answer
  /** Worth now, discounted week by week. */
  readonly presentValue: Answer
}

/** One piece of work judged. */
export interface PayOption {
  readonly name: string
  /** The crew's own entry; undefined for what is judged when they have made none. */
  readonly entry: string | undefined
  readonly sentence: string
  /** What is worked, in words: '4 panels (K10, L10…)', '12 t of gob', '4 m of heading'. */
  readonly ground: string
  readonly panels: readonly string[]
  /** What each would earn for a day's work. */
  readonly perDay: Answer
  readonly personDays: Answer
  readonly ouncesWon: Answer
  readonly breakEven: Answer
  /** The narrowest vein that leaves the wage at the grade that it has; undefined where no vein is worked. */
  readonly breakEvenWidth: Answer | undefined
  /** Chance that a day pays more than `wage`. */
  readonly chance: Answer
  /** Money left above the same days at the wage to beat, on average: what options are ranked by. */
  readonly surplus: Answer
  readonly weeks: Answer
  /** Twenty equally likely outcomes of pay a person-day, lowest first. */
  readonly twenty: readonly number[]
  /** Pay a person-day with every input at its middle: what the drivers are moved from. Not the median of the outcomes, which `perDay` is. */
  readonly middleCase: number
  /** What matters, most first. */
  readonly drivers: readonly Driver[]
  /** What must be true for a day to leave the wage, one line each. */
  readonly mustBeTrue: readonly string[]
  readonly cash: CashOverWeeks
  readonly cautions: readonly string[]
}

/** The options beside each other; what stands at the top is the one ranked first. */
export interface Pay extends PayOption {
  readonly currency: string
  readonly wage: number
  /** Every option judged, the one that leaves most on average first. Walking away is always there beside them, at nothing above the wage. */
  readonly options: readonly PayOption[]
  /** Whether walking away leaves more, on average, than every option. */
  readonly walkAway: boolean
  /** Chance that one leaves more money than another, ties shared: rows and columns as `options`, walking away last. */
  readonly odds: readonly (readonly number[])[]
  /** Options that can't be judged, and why. */
  readonly notJudged: readonly { readonly name: string, readonly entry: string | undefined, readonly why: string }[]
  readonly inputs: readonly Answer[]
  /** How many draws stand behind each figure. */
  readonly draws: number
}
