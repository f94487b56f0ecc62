import { checkFlows } from './net-present-value.ts'
import { logarithmsOfPositiveRoots } from './positive-roots.ts'

export interface RateOfReturn {
  /** The one rate per step at which the flows are worth nothing now, as a fraction; null when there is none or more than one. */
  readonly rate: number | null
  /** Every such rate above -1, ascending. */
  readonly rates: readonly number[]
  /** How often the flows turn from money out to money in or back. */
  readonly signChanges: number
  /** Why there is no rate, or why it should not be leant on. */
  readonly reason?: string
}

/**
 * The internal rate of return of equal-step payments.
 * @param flows  money in (+) and out (-); the first is now
 * @returns the rate, all rates, and in words what is doubtful about them; accurate to about 1e-14 where the root is a clean crossing
 * @throws InputError for no flows or a flow that is not finite
 * @example rateOfReturn([-100, 39, 59, 55, 20]).rate // 0.28094842...
 */
export function rateOfReturn(flows: readonly number[]): RateOfReturn {
  checkFlows(flows)
  const largest = Math.max(...flows.map(Math.abs))
  const signs = flows.filter(flow => flow !== 0).map(Math.sign)
  const signChanges = signs.filter((sign, i) => i > 0 && sign !== signs[i - 1]).length
  if (signChanges === 0) {
    return { rate: null, rates: [], signChanges, reason: largest === 0 ? 'nothing is paid' : `money only ${(signs[0] ?? 0) > 0 ? 'comes in' : 'goes out'}, so no rate balances it` }
  }
  const rates = logarithmsOfPositiveRoots(flows.map(flow => flow / largest)).map(s => Math.expm1(-s)).sort((a, b) => a - b)
  const [only, another] = rates
  const turns = `the flows change sign ${signChanges} times`
  if (only === undefined) return { rate: null, rates, signChanges, reason: `${turns} and no rate balances them; compare present values instead` }
  if (another !== undefined) return { rate: null, rates, signChanges, reason: `${turns} and ${rates.length} rates balance them; compare present values instead` }
  return signChanges === 1 ? { rate: only, rates, signChanges } : { rate: only, rates, signChanges, reason: `${turns}; one rate balances them, but a higher rate need not be better` }
}
