import type { Field, FieldValue } from '@lodebook/book'
import { valueText } from '@lodebook/book/csv'
import type { Dimension, Quantity } from '@lodebook/reckon/units'
import { findUnit, format } from '@lodebook/reckon/units'

/** What assayers call these units. */
const called: Readonly<Record<string, string>> = {
  'ozt/short ton': 'oz/ton', 'ozt/long ton': 'oz/long ton', 'dwt/short ton': 'dwt/ton', 'dwt/long ton': 'dwt/long ton', deg: '°',
}

/** A value on one line as the crew wrote it, the unit of a column's heading put beside it under its usual name. */
export function shortValue(field: Field, value: FieldValue): string {
  if (field.is.type !== 'quantity') return valueText(field, value).replace(/\s+/g, ' ')
  const { text, from } = value as Quantity
  return from === undefined ? text : `${text} ${unitName(from, field.is.dimension)}`
}

/** A value as written, and what it comes to where that is in another unit. */
export function fullValue(field: Field, value: FieldValue): string {
  if (field.is.type !== 'quantity') return valueText(field, value)
  const text = shortValue(field, value)
  const quantity = value as Quantity
  if (quantity.value === null || quantity.mark === 'nil') return text
  const base = format(quantity.value, field.is.dimension)
  return bare(base) === bare(text) ? text : `${text} = ${base}`
}

function unitName(spelling: string, dimension: Dimension): string {
  const symbol = findUnit(spelling, dimension)?.symbol ?? spelling
  return called[symbol] ?? symbol
}

/** Without spaces, commas, units of angle and zeros at the end, so that 203 and 203.0° are seen to be the same. */
const bare = (text: string): string => text.replace(/[\s,°<>~]/g, '').replace('\u2212', '-').replace(/(\.\d*?)0+(?!\d)/, '$1').replace(/\.(?!\d)/, '')
