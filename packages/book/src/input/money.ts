import { parseMoney } from '@lodebook/reckon/units'
import type { DecimalMark } from '@lodebook/reckon/units'
import type { Money } from '../values.ts'
import type { Read } from './read.ts'
import { says, wants } from './read.ts'

/**
 * Reads an amount of money of zero or more: `$1,250.50`, `30 USD`, `EUR 12`, `40`.
 * @param currency  three letters; taken when none is written, and for `$`, which many countries share
 */
export function readMoney(text: string, currency = '', decimal?: DecimalMark): Read<Money> {
  const parsed = parseMoney(text, currency, decimal === undefined ? {} : { decimal })
  if (!parsed.ok) return wants(parsed.problem.expected, parsed.problem.why)
  return parsed.money.amount < 0 ? wants('an amount of zero or more') : says(parsed.money)
}
