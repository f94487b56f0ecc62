import { finite, InputError, positive } from '../core/index.ts'

export interface BreakEven {
  /** Money to break, move and treat one unit of rock. */
  readonly costPerTonne: number
  /** Share of the gold in the rock that is got out, 0 to 1. */
  readonly recovery: number
  /** Share of what is got out that the refiner pays for, 0 to 1. */
  readonly payable: number
  /** Money for one unit of gold, and what it costs to sell it, in the same money. */
  readonly price: number
  readonly selling: number
}

/**
 * The grade at which a tonne pays its own cost: cost / (recovery x payable x (price - selling)).
 * @returns in the price's unit of gold to the cost's unit of rock: money per tonne and money per gram give g/t
 * @throws InputError for shares outside (0, 1], a negative cost, or a price that does not exceed the cost of selling
 * Source: break-even arithmetic; no published numeric case was found to check against.
 */
export function breakEvenGrade({ costPerTonne, recovery, payable, price, selling }: BreakEven): number {
  if (finite(costPerTonne, 'costPerTonne') < 0) throw new InputError('costPerTonne', costPerTonne, 'zero or more')
  for (const [field, share] of [['recovery', recovery], ['payable', payable]] as const) {
    if (positive(share, field) > 1) throw new InputError(field, share, 'a share from 0 to 1')
  }
  const margin = finite(price, 'price') - finite(selling, 'selling')
  if (margin <= 0) throw new InputError('price', price, `more than the cost of selling, ${selling}`)
  return costPerTonne / (recovery * payable * margin)
}
