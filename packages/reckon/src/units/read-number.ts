import { plainText } from './plain-text.ts'
import { add, negate, rational, toNumber, type Rational } from './rational.ts'
import { read, refuse, type Problem, type Reading } from './reading.ts'

/** Which mark stands before the tenths. A file or a crew may write `,`; without word of it `.` is taken. */
export type DecimalMark = '.' | ','

/** Where a number can begin a text: mixed fraction, fraction, or decimal with grouped thousands. Sticks to plain text. */
export const numberPattern = String.raw`[+-]? ?(?:\d+(?: | ?- ?)\d+ ?/ ?\d+|\d+ ?/ ?\d+|(?:\d{1,3}(?: \d{3})+(?![\d/])(?:[.,]\d+)?|\d+(?:[.,]\d*)*|[.,]\d+)(?:e[+-]?\d{1,3}(?!\d))?)`

/**
 * Reads one plain-text number exactly: `7 1/2`, `7-1/2`, `1,250.5`, `1 250`, `.35`, `1e-3`, `0,35`.
 *
 * `3,5` is refused with a question, since it may be 3.5 or a slip for 35; `0,35` and `1.250,5` can be read one way only.
 * @param text  as {@link plainText} leaves it, nothing but the number
 */
export function readNumber(text: string, decimal: DecimalMark = '.'): Reading<Rational> {
  const [, sign = '', body = ''] = /^([+-]?) ?(.*)$/.exec(text) ?? []
  const size = readSize(body, decimal)
  return size.ok && sign === '-' ? read(negate(size.value)) : size
}

function readSize(body: string, decimal: DecimalMark): Reading<Rational> {
  const mixed = /^(?:(\d{1,15})(?: | ?- ?))?(\d{1,15}) ?\/ ?(\d{1,15})$/.exec(body)
  if (mixed) {
    const [, whole, top = '', bottom = ''] = mixed
    if (Number(bottom) === 0) return refuse('a fraction over zero has no value')
    if (whole !== undefined && Number(top) >= Number(bottom)) return refuse(`${top}/${bottom} beside a whole number should be less than one`)
    return read(add(rational(whole ?? '0'), rational(`${top}/${bottom}`)))
  }
  if (/^\d+(?:\.\d*)?(?:e[+-]?\d{1,3})?$|^\.\d+(?:e[+-]?\d{1,3})?$/i.test(body) && (decimal === '.' || !/\./.test(body))) return read(rational(body))
  const grouped = decimal === '.' ? /^[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/ : /^[1-9]\d{0,2}(?:\.\d{3})+(?:,\d+)?$/
  if (grouped.test(body)) return read(rational(body.replaceAll(decimal === '.' ? ',' : '.', '').replace(',', '.')))
  if (/^[1-9]\d{0,2}(?: \d{3})+(?:[.,]\d+)?$/.test(body)) return read(rational(body.replaceAll(' ', '').replace(',', '.')))
  if (/^[1-9]\d{0,2}(?:\.\d{3})+,\d+$/.test(body)) return read(rational(body.replaceAll('.', '').replace(',', '.')))
  if (decimal === ',' ? /^\d*,\d+(?:e[+-]?\d{1,3})?$|^\d+,$/i.test(body) : /^0?,\d+$/.test(body)) return read(rational(body.replace(',', '.')))
  if (decimal === ',' && /^\d*\.\d+$/.test(body)) return refuse(`did you mean ${body} with a decimal point? numbers here are written with a decimal comma`)
  if (/^\d+,\d+$/.test(body)) return refuse(`did you mean ${body.replace(',', '.')} or ${body.replace(',', '')}?`)
  return refuse(/\d/.test(body) ? 'it does not read as one number' : 'there is no number in it')
}

/**
 * Reads a bare number as people write it.
 * @returns the nearest double, or what is wrong with the text; never throws, never NaN or infinite
 */
export function parseNumber(text: string, options: { readonly decimal?: DecimalMark } = {}):
{ readonly ok: true, readonly value: number } | { readonly ok: false, readonly problem: Problem } {
  const value = text.trim()
  const reading = value.length > 100 ? refuse('it is too long to be a number') : readNumber(plainText(value), options.decimal)
  const number = reading.ok ? toNumber(reading.value) : NaN
  if (Number.isFinite(number)) return { ok: true, value: number }
  return { ok: false, problem: { value: value.slice(0, 100), expected: 'a number such as 12, 1,250.5 or 7 1/2', why: reading.ok ? 'it is too large to hold' : reading.why } }
}
