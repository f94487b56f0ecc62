import { plainText } from './plain-text.ts'
import { negate, toNumber } from './rational.ts'
import { read, refuse, type Problem, type Reading } from './reading.ts'
import { readNumber, type DecimalMark } from './read-number.ts'

/** An amount as written beside its exact value; `currency` is the three-letter ISO 4217 code. */
export interface ParsedMoney { readonly text: string, readonly amount: number, readonly currency: string }

const dollars: Readonly<Record<string, string>> = { us: 'USD', u: 'USD', c: 'CAD', ca: 'CAD', a: 'AUD', au: 'AUD', nz: 'NZD' }
const signs: Readonly<Record<string, string>> = { '£': 'GBP', '€': 'EUR', '₹': 'INR', '₱': 'PHP' }
/** Signs that several countries use: they mean the book's own currency when it is one of them. */
const shared: Readonly<Record<string, readonly string[]>> = {
  $: ['USD', 'CAD', 'AUD', 'NZD', 'MXN', 'ARS', 'CLP', 'COP', 'SGD', 'HKD', 'FJD', 'GYD'],
  '¥': ['JPY', 'CNY'],
  kr: ['SEK', 'NOK', 'DKK', 'ISK'],
}

/**
 * Reads an amount of money: `$1,250.50`, `1250.5`, `US$40`, `40 EUR`, `CAD 12`, `-$5`, `(5.00)`.
 * @param text  anything; never throws
 * @param defaultCurrency  the book's currency, taken when none is written and to tell whose dollar a plain `$` is
 */
export function parseMoney(text: string, defaultCurrency: string, options: { readonly decimal?: DecimalMark } = {}):
{ readonly ok: true, readonly money: ParsedMoney } | { readonly ok: false, readonly problem: Problem } {
  const written = text.trim()
  const result = written === '' ? refuse('nothing is written') : written.length > 60 ? refuse('it is too long to be an amount') : amount(plainText(written), defaultCurrency, options.decimal)
  if (result.ok) return { ok: true, money: { text: written, ...result.value } }
  return { ok: false, problem: { value: written.slice(0, 60), expected: 'an amount such as $1,250.50 or 40 EUR', why: result.why } }
}

function amount(text: string, defaultCurrency: string, decimal?: DecimalMark): Reading<{ amount: number, currency: string }> {
  const bracketed = /^\((.*)\)$/.exec(text)
  const [, first = '', before = '', second = '', number = '', after = ''] = /^([+-]?) ?([^\d.,+-]*?) ?([+-]?) ?(\d[\d., ]*|[.,]\d+) ?(\D*)$/.exec(bracketed?.[1] ?? text) ?? []
  if (number === '') return refuse('there is no amount in it')
  if (before !== '' && after !== '') return refuse(`'${after.trim()}' after the number is not clear`)
  if ([bracketed ? '-' : '', first, second].filter(sign => sign !== '').length > 1) return refuse('it has two signs')
  const currency = currencyOf((before || after).trim(), defaultCurrency)
  if (!currency.ok) return currency
  const value = readNumber(number.trim(), decimal)
  if (!value.ok) return value
  const exact = toNumber(bracketed || first === '-' || second === '-' ? negate(value.value) : value.value)
  return Number.isFinite(exact) ? read({ amount: exact, currency: currency.value }) : refuse('it is too large to hold')
}

function currencyOf(sign: string, own: string): Reading<string> {
  if (sign === '') return /^[A-Z]{3}$/.test(own) ? read(own) : refuse('in what currency? write it, as in 40 USD')
  if (Object.hasOwn(signs, sign)) return read(signs[sign] ?? sign)
  const users = Object.hasOwn(shared, sign) ? shared[sign] : undefined
  if (users) return users.includes(own) ? read(own) : refuse(`whose ${sign}? write ${users.slice(0, 4).join(', ')}`)
  const dollar = /^([a-z]{1,2}) ?\$$/i.exec(sign)?.[1]?.toLowerCase()
  if (dollar !== undefined && Object.hasOwn(dollars, dollar)) return read(dollars[dollar] ?? own)
  return /^[a-z]{3}$/i.test(sign) ? read(sign.toUpperCase()) : refuse(`'${sign}' is not a currency; write three letters, such as USD`)
}
