import { parseQuantity } from '@lodebook/reckon/units'
import type { Parsed, ParseOptions } from '@lodebook/reckon/units'
import type { FieldType } from '../kinds/field.ts'
import { dipToward } from './dip-toward.ts'

type QuantityType = Extract<FieldType, { type: 'quantity' }>

/** Reads a quantity for a field. Where the field lets a point of the compass follow, the text keeps it and the value is the angle alone. */
export function readQuantity(is: QuantityType, text: string, options: ParseOptions): Parsed {
  if (is.toward !== true) return parseQuantity(text, is.dimension, options)
  const parsed = parseQuantity(dipToward(text).angle, is.dimension, options)
  return parsed.ok ? { ok: true, quantity: { ...parsed.quantity, text: text.trim() } }
    : { ok: false, problem: { ...parsed.problem, value: text, expected: 'a dip such as 62 or 62 SE, 0 to 90 from level' } }
}
