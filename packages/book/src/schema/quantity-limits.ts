import type { FieldType } from '../kinds/index.ts'
import { baseUnit, convertWithin } from '@lodebook/reckon/units'

type QuantityType = Extract<FieldType, { type: 'quantity' }>
type Limits = { readonly min?: number, readonly above?: number, readonly max?: number }

const spelled: Readonly<Record<string, string>> = { deg: '°', C: '°C', m2: 'm²', m3: 'm³', F: '°F', ft2: 'ft²', ft3: 'ft³', 'ozt/short ton': 'oz/ton', 'dwt/short ton': 'dwt/ton' }
const an: Readonly<Record<string, string>> = { area: 'an area', azimuth: 'an azimuth', inclination: 'an inclination', angle: 'an angle', percent: 'a percentage' }

/**
 * In words, what a quantity of this field may be: `an azimuth from 0 to 360 °`, `a length above 0 ft`.
 * @param unit  a unit of the field's dimension in which the limits are said; the base unit when left out
 */
export function limitWords(is: QuantityType, unit: string = baseUnit[is.dimension]): string {
  const said = (limit: number) => limit === 0 && is.dimension !== 'temperature' ? 0 : Number(convertWithin(limit, baseUnit[is.dimension], unit, is.dimension).toPrecision(figures))
  const own = Object.entries({ min: is.min, above: is.above, max: is.max })
  const limits = Object.fromEntries(own.flatMap(([name, limit]) => limit === undefined ? [] : [[name, said(limit)]]))
  return `${an[is.dimension] ?? `a ${is.dimension}`}${range(limits, spelled[unit] ?? unit)}`
}

/** Of a limit that is said in another unit than its own. */
const figures = 6

function range({ min, above, max }: Limits, unit: string): string {
  const u = unit === '' ? '' : ` ${unit}`
  if (min !== undefined && max !== undefined) return ` from ${min} to ${max}${u}`
  if (above !== undefined) return max === undefined ? ` above ${above}${u}` : ` above ${above} and up to ${max}${u}`
  if (min !== undefined) return ` of ${min}${u} or more`
  return max === undefined ? '' : ` of at most ${max}${u}`
}

/** The same for a bare number. */
export const numberWords = (limits: Limits): string => `a number${range(limits, '')}`

export const within = (value: number, { min, above, max }: Limits): boolean =>
  Number.isFinite(value) && (min === undefined || value >= min) && (above === undefined || value > above) && (max === undefined || value <= max)
