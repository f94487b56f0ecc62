import type { SaleTerms, WorkInputs, WorkPlan } from './work-outcome.ts'
import { workOutcome } from './work-outcome.ts'

/** An option as it is judged: its plan, and its rock in each outcome of the ground. */
export interface JudgedOption {
  readonly plan: WorkPlan
  readonly tonnes: ArrayLike<number>
  readonly ounces: ArrayLike<number>
}

/** One option's outcomes, draw by draw. Draws of the same place in two options share the ground and every other input. */
export interface OptionOutcomes {
  readonly personDays: Float64Array
  readonly ouncesWon: Float64Array
  readonly income: Float64Array
  readonly cost: Float64Array
  /** What a person-day leaves. */
  readonly perDay: Float64Array
}

/** What has come so far: the arrays are filled up to `done`. */
export interface OutcomesSoFar { readonly done: number, readonly outcomes: readonly OptionOutcomes[] }

export interface OptionsInput {
  readonly options: readonly JudgedOption[]
  /** What draw k is like; the ground outcome it goes with is k modulo the number of ground outcomes. */
  readonly inputsAt: (k: number) => WorkInputs
  readonly terms: SaleTerms
  readonly draws: number
  /** Draws between two looks at what has come so far; all at once unless said. */
  readonly chunk?: number
}

/**
 * Monte Carlo over options on common random numbers: every option meets the same ground, price, rates and recovery in the same draw, so that what
 * one leaves more than another is not blurred by luck.
 *
 * A generator: it gives back how many draws are done after each chunk, so that a caller can show what has come, let others work, or stop.
 * The arrays fill from the front; what lies beyond the draws done is 0.
 */
export function* optionOutcomes({ options, inputsAt, terms, draws, chunk = draws }: OptionsInput): Generator<OutcomesSoFar, readonly OptionOutcomes[]> {
  const row = () => new Float64Array(draws)
  const outcomes = options.map((): OptionOutcomes => ({ personDays: row(), ouncesWon: row(), income: row(), cost: row(), perDay: row() }))
  for (let start = 0; start < draws; start += chunk) {
    const end = Math.min(draws, start + chunk)
    for (let k = start; k < end; k++) {
      const inputs = inputsAt(k)
      for (let o = 0; o < options.length; o++) {
        const { plan, tonnes, ounces } = options[o]!
        const ground = k % tonnes.length
        const one = workOutcome(plan, { tonnes: tonnes[ground]!, ounces: ounces[ground]! }, inputs, terms)
        const into = outcomes[o]!
        into.personDays[k] = one.personDays
        into.ouncesWon[k] = one.ouncesWon
        into.income[k] = one.income
        into.cost[k] = one.cost
        into.perDay[k] = one.personDays > 0 ? (one.income - one.cost) / one.personDays : 0
      }
    }
    yield { done: end, outcomes }
  }
  return outcomes
}

/** The same in one go. */
export function allOptionOutcomes(input: OptionsInput): readonly OptionOutcomes[] {
  const run = optionOutcomes(input)
  for (;;) {
    const step = run.next()
    if (step.done) return step.value
  }
}

/**
 * Chance that one option leaves more money than another when every person-day is worth `wage` elsewhere: odds[i][j] for i over j, ties shared.
 * An option with no outcomes of its own (walking away) is given as undefined and leaves just nothing.
 */
export function beatOdds(outcomes: readonly (OptionOutcomes | undefined)[], wage: number): readonly (readonly number[])[] {
  const draws = outcomes.find(o => o !== undefined)?.income.length ?? 0
  const surplus = outcomes.map(o => o ? surplusOf(o, wage) : new Float64Array(draws))
  return surplus.map(a => surplus.map((b) => {
    if (a === b || draws === 0) return 0.5
    let wins = 0
    for (let k = 0; k < draws; k++) wins += a[k]! > b[k]! ? 1 : a[k]! === b[k]! ? 0.5 : 0
    return wins / draws
  }))
}

/** What an option leaves above the same days at `wage`, draw by draw. */
export function surplusOf({ income, cost, personDays }: OptionOutcomes, wage: number): Float64Array {
  return income.map((money, k) => money - cost[k]! - wage * personDays[k]!)
}
