import { drawsFrom } from '@lodebook/reckon'
import { correlatedNormals, positiveAt, shareAt, workSteps } from '@lodebook/reckon/pay'
import type { SaleTerms, WorkInputs, WorkStep } from '@lodebook/reckon/pay'
import type { Answer } from '../answer.ts'
import { buildAnswer } from '../build-answer.ts'
import type { Assume } from '../assumptions.ts'
import { numberOf } from '../read.ts'
import { figure } from '../words.ts'
import type { PayInput } from './input.ts'
import { saleTerms } from './price.ts'
import type { GoldPrice } from './price.ts'
import { standingSpread, stepRate } from './rates.ts'
import type { AnsweredSpread } from './rates.ts'
import { recoveryOf } from './recovery.ts'

/** Everything beside the ground that all options share, as spreads. */
export interface SharedInputs {
  readonly rates: Readonly<Record<WorkStep, AnsweredSpread>>
  readonly otherShare: AnsweredSpread
  readonly recovery: AnsweredSpread
  readonly price: GoldPrice
  readonly payable: AnsweredSpread
  readonly terms: SaleTerms
  readonly termsAnswer: Answer
  readonly middle: WorkInputs
}

const seed = 1897

export function sharedInputs({ work, pans, assume, units }: PayInput, price: GoldPrice): SharedInputs {
  const payable = numberOf(price.entry, 'payable')
  const rates = Object.fromEntries(workSteps.map(step => [step, stepRate(step, work, assume, units)])) as Record<WorkStep, AnsweredSpread>
  const spreads = {
    rates, price, recovery: recoveryOf(pans, assume),
    otherShare: standingSpread('pay.other', assume('other work share')),
    payable: payable === undefined ? standingSpread('pay.payable', assume('refiner pays')) : fixed('pay.payable', payable / 100, price.entry.id),
  }
  const { terms, answer } = saleTerms(price, assume)
  return {
    ...spreads, terms, termsAnswer: answer,
    middle: {
      rates: Object.fromEntries(workSteps.map(step => [step, rates[step].median])) as Record<WorkStep, number>,
      otherShare: spreads.otherShare.median, recovery: spreads.recovery.median, price: price.median, payable: spreads.payable.median,
    },
  }
}

const fixed = (id: string, value: number, entry: string): AnsweredSpread => ({
  median: value, low: value, high: value,
  answer: buildAnswer({ id, value, unit: 'of the value', sentence: `The refiner pays ${figure(100 * value, 3)} % of the value, as written with the price.`, method: { name: 'as written', page: 'pay' }, from: [entry] }),
})

/**
 * What each draw is like beside the ground. Rates of work move together (a slow ground is slow throughout); the rest moves by itself.
 * @returns the same object at every call, filled anew: read it before the next call
 */
export function drawnInputs(shared: SharedInputs, assume: Assume, count: number): (k: number) => WorkInputs {
  const together = Math.min(0.95, Math.max(0, assume('rates move together').value))
  const m = workSteps.length + 4
  const moves = (i: number, j: number) => i === j ? 1 : i < workSteps.length && j < workSteps.length ? together : 0
  const correlation = Array.from({ length: m }, (_, i) => Array.from({ length: m }, (_, j) => moves(i, j)))
  const normals = correlatedNormals(correlation, count, drawsFrom(seed))
  const rates = workSteps.map((step, i) => normals[i]!.map(z => positiveAt(shared.rates[step], z)))
  const [other, recovery, price, payable] = normals.slice(workSteps.length) as [Float64Array, Float64Array, Float64Array, Float64Array]
  const otherShare = other.map(z => Math.min(0.95, shareAt(shared.otherShare, z)))
  const won = recovery.map(z => shareAt(shared.recovery, z))
  const sold = price.map(z => positiveAt(shared.price, z)), paid = payable.map(z => shareAt(shared.payable, z))
  const one = { rates: { ...shared.middle.rates }, otherShare: 0, recovery: 0, price: 0, payable: 0 }
  return (k) => {
    for (let i = 0; i < workSteps.length; i++) one.rates[workSteps[i]!] = rates[i]![k]!
    one.otherShare = otherShare[k]!
    one.recovery = won[k]!
    one.price = sold[k]!
    one.payable = paid[k]!
    return one
  }
}
