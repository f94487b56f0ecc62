import type { Entry } from '@lodebook/book'
import { buildAnswer } from '../build-answer.ts'
import { gramsPerOunce } from '../grade/troy.ts'
import { moneyOf, numberOf, textOf } from '../read.ts'
import { money } from '../words.ts'
import type { Spread } from './rates.ts'

export interface GoldPrice extends Spread { readonly currency: string, readonly entry: Entry }

/** The latest price of gold in the book, for a fine troy ounce; undefined when none is written down in this currency. */
export function goldPrice(prices: readonly Entry[], currency: string | undefined): GoldPrice | undefined {
  const entry = prices.filter(p => textOf(p, 'of') === 'gold' && moneyOf(p, 'amount') && (currency === undefined || moneyOf(p, 'amount')!.currency === currency))
    .sort((a, b) => (textOf(b, 'on') ?? '').localeCompare(textOf(a, 'on') ?? ''))[0]
  const amount = entry && moneyOf(entry, 'amount')
  if (!entry || !amount) return undefined
  const perGram = textOf(entry, 'per') === 'gram fine'
  const median = perGram ? amount.amount * gramsPerOunce : amount.amount
  const spreadPerYear = (numberOf(entry, 'spread') ?? 15) / 100
  // Half a year on: a plan this size is worked and sold within the year.
  const sigma = spreadPerYear * Math.sqrt(0.5)
  const [low, high] = [median * Math.exp(-1.2816 * sigma), median * Math.exp(1.2816 * sigma)]
  return {
    median, low, high, currency: amount.currency, entry,
    answer: buildAnswer({
      id: 'pay.price', value: median, unit: `${amount.currency}/ozt`, range: { low, high, confidence: 0.8, because: ['the price moves until the gold is sold'] },
      sentence: `Gold at ${money(median, amount.currency)} a fine ounce on ${textOf(entry, 'on') ?? ''}.`,
      method: { name: 'the book\'s latest price', page: 'pay', working: [perGram ? `${amount.text} a gram × ${gramsPerOunce}` : amount.text, `moves by ${Math.round(100 * spreadPerYear)} % a year (one standard deviation), half a year ahead`] },
      from: [entry.id],
      assumed: numberOf(entry, 'spread') === undefined ? [{ name: 'price spread', value: 15, unit: '% a year', why: 'no spread was written with the price; a guess, no source' }] : [],
    }),
  }
}
