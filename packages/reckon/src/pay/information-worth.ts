import { finite, InputError } from '../core/index.ts'

export interface Decision {
  /** Chance of each state of the ground; sums to 1. */
  readonly prior: readonly number[]
  /** payoffs[action][state], any one currency. */
  readonly payoffs: readonly (readonly number[])[]
  /** likelihoods[signal][state]: chance of the signal when that is the state; sums to 1 over the signals. */
  readonly likelihoods: readonly (readonly number[])[]
  /** What it costs to get the signal. */
  readonly cost?: number
}

export interface InformationWorth {
  /** Expected payoff of the best action when nothing more is learnt. */
  readonly without: number
  /** Expected payoff when the signal is waited for and the best action then taken, before its cost. */
  readonly with: number
  /** with - without: the most that the signal is worth paying for. Never below zero. */
  readonly worth: number
  /** worth - cost; below zero when the signal costs more than it tells. */
  readonly net: number
  /** What knowing the state for certain would be worth: no signal is worth more. */
  readonly perfect: number
  /** posteriors[signal][state]; null for a signal that can't come. */
  readonly posteriors: readonly (readonly number[] | null)[]
  readonly signalChances: readonly number[]
  /** The best action without the signal, and after each signal: an index into payoffs. */
  readonly bestWithout: number
  readonly bestAfter: readonly (number | null)[]
}

/** How far chances may miss 1 in all: eight printed digits, since tables round. */
const sumTolerance = 1e-8

/**
 * What a piece of information (an assay, a drill hole, a day's sampling) is worth to a decision: Bayes' rule and expected payoff.
 * @param decision  not modified
 * @throws InputError for chances that are negative or do not sum to 1, rows of unequal length, numbers that are not finite
 * Source: H. Raiffa, Decision Analysis, 1968 (from memory); C. Ragsdale, Spreadsheet Modeling and Decision Analysis, ch. 15.
 */
export function informationWorth({ prior, payoffs, likelihoods, cost = 0 }: Decision): InformationWorth {
  check(prior, payoffs, likelihoods, cost)
  const chances = rescaled(prior)
  const joint = likelihoods.map(row => row.map((likelihood, state) => likelihood * (chances[state] ?? 0)))
  const signalChances = joint.map(total)
  const alone = best(payoffs, chances)
  const after = joint.map(weights => best(payoffs, weights))
  const informed = total(after.map(({ payoff }) => payoff))
  const known = total(chances.map((chance, state) => chance * Math.max(...payoffs.map(row => row[state] ?? 0))))
  // An action chosen after a signal is never worse on average; a tiny minus is rounding.
  const worth = Math.max(0, informed - alone.payoff)
  return {
    without: alone.payoff, with: informed, worth, net: worth - cost, perfect: Math.max(0, known - alone.payoff), signalChances,
    posteriors: joint.map((weights, signal) => {
      const chance = signalChances[signal] ?? 0
      return chance > 0 ? weights.map(weight => weight / chance) : null
    }),
    bestWithout: alone.action,
    bestAfter: after.map(({ action }, signal) => (signalChances[signal] ?? 0) > 0 ? action : null),
  }
}

const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0)
const rescaled = (chances: readonly number[]): readonly number[] => { const sum = total(chances); return chances.map(chance => chance / sum) }

/** The action with the highest payoff under weights that need not sum to 1; the first of equals. */
function best(payoffs: readonly (readonly number[])[], weights: readonly number[]): { action: number, payoff: number } {
  const expected = payoffs.map(row => total(row.map((payoff, state) => payoff * (weights[state] ?? 0))))
  const payoff = Math.max(...expected)
  return { action: expected.indexOf(payoff), payoff }
}

function check(prior: readonly number[], payoffs: readonly (readonly number[])[], likelihoods: readonly (readonly number[])[], cost: number): void {
  if (prior.length === 0) throw new InputError('prior', prior, 'the chance of at least one state')
  chancesFrom(prior, 'prior', i => `prior[${i}]`)
  if (payoffs.length === 0) throw new InputError('payoffs', payoffs, 'a row of payoffs for at least one action')
  if (likelihoods.length === 0) throw new InputError('likelihoods', likelihoods, 'a row of chances for at least one signal')
  for (const [name, rows] of [['payoffs', payoffs], ['likelihoods', likelihoods]] as const) {
    for (const [i, row] of rows.entries()) {
      if (row.length !== prior.length) throw new InputError(`${name}[${i}]`, row, `one number for each of the ${prior.length} states of prior`)
      for (const [state, value] of row.entries()) finite(value, `${name}[${i}][${state}]`)
    }
  }
  for (const state of prior.keys()) chancesFrom(likelihoods.map(row => row[state] ?? 0), `likelihoods of state ${state}`, i => `likelihoods[${i}][${state}]`)
  if (finite(cost, 'cost') < 0) throw new InputError('cost', cost, 'zero or more')
}

function chancesFrom(chances: readonly number[], whole: string, field: (i: number) => string): void {
  for (const [i, chance] of chances.entries()) if (!(chance >= 0 && chance <= 1)) throw new InputError(field(i), chance, 'a chance from 0 to 1')
  if (Math.abs(total(chances) - 1) > sumTolerance) throw new InputError(whole, chances, 'chances that sum to 1')
}
