import type { Entry } from '@lodebook/book'
import type { SaleTerms } from '@lodebook/reckon/pay'
import type { Answer } from '../answer.ts'
import type { Assume } from '../assumptions.ts'
import { buildAnswer } from '../build-answer.ts'
import { gramsPerOunce } from '../grade/troy.ts'
import { moneyOf, numberOf, textOf } from '../read.ts'
import { figure, money } from '../words.ts'
import type { AnsweredSpread } from './rates.ts'

export interface GoldPrice extends AnsweredSpread { readonly currency: string, readonly entry: Entry }

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

/** Usual fineness of gold won by hand from a vein, until the refiner says; common practice, no source. */
const usualFineness = 850

/** What the refiner takes beside the share that he keeps, and the owner of the ground: from the price that is used and the royalty in force. */
export function saleTerms({ entry, currency }: GoldPrice, assume: Assume): { readonly terms: SaleTerms, readonly answer: Answer } {
  const royalty = assume('royalty')
  const of = (field: string) => { const said = moneyOf(entry, field); return said?.currency === currency ? said.amount : 0 }
  const written = numberOf(entry, 'fineness')
  const terms: SaleTerms = {
    fineness: (written ?? usualFineness) / 1000, treatment: of('treatment'), minimum: of('minimum'), lots: Math.max(1, numberOf(entry, 'lots') ?? 1),
    royalty: Math.min(1, Math.max(0, royalty.value)),
  }
  const charged = terms.treatment > 0 || terms.minimum > 0
  return {
    terms,
    answer: buildAnswer({
      id: 'pay.terms', value: terms.minimum * terms.lots, unit: currency,
      sentence: `${charged ? `The refiner charges ${money(terms.treatment, currency)} an ounce sent, ${money(terms.minimum, currency)} a lot at least` : 'No charge of the refiner is written with the price'}; ${terms.lots === 1 ? 'one lot' : `${terms.lots} lots`} of ${figure(1000 * terms.fineness, 3)} fine; royalty ${figure(100 * terms.royalty, 2)} %.`,
      method: { name: 'as written with the price', page: 'pay', working: ['charge = max(treatment × won / fineness, least charge × lots)'] },
      sources: ['That least charges rule small lots: a published list of refiner terms, $75 and $250 a lot (read)'],
      from: [entry.id], cautions: charged ? [] : ['Small lots meet a least charge: ask the refiner and write it with the price.'],
      assumed: [royalty, ...(written === undefined ? [{ name: 'fineness', value: usualFineness, unit: 'parts in a thousand', why: 'none was written with the price; common practice, no source' }] : [])],
    }),
  }
}
