import type { Dimension, Quantity } from '@lodebook/reckon/units'
import { baseUnit, findUnit } from '@lodebook/reckon/units'
import { readQuantity } from '../input/read-quantity.ts'
import type { FieldType } from '../kinds/index.ts'
import { checkShape } from './from-zod.ts'
import type { Problem } from './problem.ts'
import { refuse } from './problem.ts'
import { limitWords, within } from './quantity-limits.ts'
import { quantitySchema } from './value-schemas.ts'

type QuantityType = Extract<FieldType, { type: 'quantity' }>

/**
 * A stored value may differ from what its text says by this part of itself and no more: room for the last digits of another
 * program's arithmetic, none for another reading.
 */
const sameReading = 1e-9

/** Checks a quantity: its shape, that its value is what its text says, and that it lies within the field's limits. */
export function checkQuantity(is: QuantityType, field: string, label: string, value: unknown): Problem | undefined {
  const misshapen = checkShape(quantitySchema, field, label, value)
  if (misshapen) return misshapen
  const quantity = value as Quantity
  if (quantity.unit !== baseUnit[is.dimension]) return refuse(`${field}.unit`, label, quantity.unit, `a value kept in ${baseUnit[is.dimension]}`)
  return limits(is, field, label, quantity) ?? reading(is, field, label, quantity)
}

function limits(is: QuantityType, field: string, label: string, quantity: Quantity): Problem | undefined {
  const { value, mark } = quantity
  if (mark !== undefined && mark !== 'about' && is.marks !== true) {
    return refuse(field, label, quantity, `${limitWords(is)}, measured`, 'because only what was looked for can be below, above, a trace or nil')
  }
  if (value === null) return mark === 'trace' ? undefined : refuse(field, label, quantity, limitWords(is))
  if (mark === 'nil') return value === 0 ? undefined : refuse(field, label, quantity, 'the value 0 beside nil')
  return within(value, is) ? undefined : refuse(field, label, quantity, limitWords(is, unitWritten(quantity, is.dimension)))
}

/** The unit that the text says or that was taken for it, so that the writer is answered in it; undefined when there is none or several. */
function unitWritten({ text, from }: Quantity, dimension: Dimension): string | undefined {
  const word = from ?? text.trim().replace(/^[^a-z'"%°]*/i, '')
  return findUnit(word, dimension)?.symbol
}

/** Whether the value is what the text says, with the tenths after a point or after a comma: which one the crew writes is not kept. */
function reading(is: QuantityType, field: string, label: string, quantity: Quantity): Problem | undefined {
  const from = quantity.from === undefined ? {} : { defaultUnit: quantity.from }
  const plain = readQuantity(is, quantity.text, from)
  if (plain.ok && agrees(plain.quantity, quantity)) return undefined
  const comma = readQuantity(is, quantity.text, { ...from, decimal: ',' })
  if (comma.ok && agrees(comma.quantity, quantity)) return undefined
  if (!plain.ok) return refuse(field, label, quantity, plain.problem.expected, plain.problem.why)
  const { value, unit } = plain.quantity
  return refuse(`${field}.value`, label, quantity.value, `${value ?? 'no number'} ${unit}, which is what ${JSON.stringify(quantity.text)} says`)
}

const agrees = (said: Quantity, kept: Quantity): boolean => said.mark === kept.mark && (said.value === null || kept.value === null ? said.value === kept.value
  : Math.abs(said.value - kept.value) <= sameReading * Math.max(Math.abs(said.value), Math.abs(kept.value)))
