import type { FieldType } from '../kinds/index.ts'
import { baseUnit } from '@lodebook/reckon/units'

type QuantityType = Extract<FieldType, { type: 'quantity' }>
type Limits = { readonly min?: number, readonly above?: number, readonly max?: number }

const spelled: Readonly<Record<string, string>> = { deg: '°', C: '°C', m2: 'm²', m3: 'm³' }
const an: Readonly<Record<string, string>> = { area: 'an area', azimuth: 'an azimuth', inclination: 'an inclination', angle: 'an angle', percent: 'a percentage' }

/** In words, what a quantity of this field may be: `an azimuth from 0 to 360 °`, `a length above 0 m`. */
export function limitWords(is: QuantityType): string {
  const base = baseUnit[is.dimension]
  return `${an[is.dimension] ?? `a ${is.dimension}`}${range(is, spelled[base] ?? base)}`
}

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
