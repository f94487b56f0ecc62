import { InputError, type Degrees } from '../core/index.ts'
import { parseQuantity } from './parse-quantity.ts'

/**
 * An azimuth given as a number or as a field book writes it, degrees clockwise from north in [0, 360).
 * @param field  path of the input, for the error
 * @throws InputError when it is outside [0, 360] or can't be read
 * @example azimuthFrom('S68-05-35W', 'legs[0].azimuth') // 248.0930555...
 */
export function azimuthFrom(value: number | string, field: string): Degrees {
  const parsed = parseQuantity(String(value), 'azimuth')
  if (!parsed.ok) throw new InputError(field, value, parsed.problem.expected, `${field}: ${parsed.problem.value} will not do: ${parsed.problem.why}`)
  return parsed.quantity.value ?? 0
}
