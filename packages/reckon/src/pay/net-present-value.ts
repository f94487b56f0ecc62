import { finite, InputError } from '../core/index.ts'

/**
 * What a row of equal-step payments is worth now: sum of flow_t / (1 + rate)^t.
 * @param rate  per step, as a fraction (0.08 for 8 %), above -1
 * @param flows  money in (+) and out (-); the first is now, the rest one step apart; any currency
 * @throws InputError for a rate of -1 or less, no flows, or a flow that is not finite
 * Source: H. C. Hoover, Principles of Mining, 1909, table II (single payments).
 * @example netPresentValue(0.08, [-40000, 5000, 8000, 12000, 30000]) // 3065.2226681...
 */
export function netPresentValue(rate: number, flows: readonly number[]): number {
  if (!(Number.isFinite(rate) && rate > -1)) throw new InputError('rate', rate, 'a rate above -1, as a fraction (0.08 for 8 %)')
  checkFlows(flows)
  return finite(flows.reduceRight((later, flow) => flow + later / (1 + rate), 0), 'rate', 'a rate at which the sum is not too large to hold')
}

/** @throws InputError naming the first flow that is not a finite number */
export function checkFlows(flows: readonly number[]): void {
  if (flows.length === 0) throw new InputError('flows', flows, 'at least one payment')
  for (const [i, flow] of flows.entries()) finite(flow, `flows[${i}]`, 'an amount of money')
}
