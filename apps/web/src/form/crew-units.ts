import type { FieldType } from '@lodebook/book'
import type { Dimension } from '@lodebook/reckon/units'
import type { BookState } from '../bookkeeper/desk.ts'

/** Units offered beside a field, the crew's usual one first. A bare number takes the one that is chosen; one written with its unit keeps it. */
const metric: Partial<Record<Dimension, readonly string[]>> = {
  length: ['m', 'cm', 'mm', 'ft', 'in'], area: ['m2', 'ft2'], volume: ['m3', 'L', 'ft3'], mass: ['kg', 'g', 'mg', 't', 'lb'], grade: ['g/t', 'ppb', 'oz/ton', 'dwt/ton'],
  density: ['t/m3', 'lb/ft3'], temperature: ['C', 'F'], speed: ['m/s', 'ft/min'], flow: ['m3/s', 'L/s', 'cfm'], duration: ['h', 'min'], percent: ['%'], concentration: ['ppm', '%'], radon: ['Bq/m3', 'pCi/L'],
  pressure: ['hPa', 'kPa', 'inHg'],
}
const imperial: Partial<Record<Dimension, readonly string[]>> = {
  ...metric, length: ['ft', 'in', 'm', 'cm'], area: ['ft2', 'm2'], volume: ['ft3', 'L', 'm3'], mass: ['lb', 'g', 'mg', 'kg'], grade: ['oz/ton', 'dwt/ton', 'g/t', 'ppb'],
  density: ['lb/ft3', 't/m3'], temperature: ['F', 'C'], speed: ['ft/min', 'm/s'], flow: ['cfm', 'm3/s'], pressure: ['inHg', 'hPa'],
}
/** Where a bare number could be off by a thousand, none is taken until the crew has chosen one. */
const neverGuessed: readonly Dimension[] = ['mass', 'volume']

export const unitsOffered = (dimension: Dimension, units: BookState['units']): readonly string[] =>
  (units === 'feet and oz/ton' ? imperial : metric)[dimension] ?? []

/** What a field's bare numbers measure; the tapes in a place are lengths. Undefined for a field without a unit. */
export const measuredIn = (is: FieldType): Dimension | undefined =>
  is.type === 'quantity' ? is.dimension : is.type === 'place' || is.type === 'places' || is.type === 'ground-line' ? 'length' : undefined

const key = (kind: string, field: string): string => `unit:${kind}.${field}`

/**
 * The unit that a bare number in this field takes: what was chosen for it last on this device, else the crew's usual one; '' when it must be said.
 * What somebody else wrote there last does not count: a form must not mean feet today and metres tomorrow.
 */
export function unitTaken(kind: string, field: string, dimension: Dimension, units: BookState['units']): string {
  const offered = unitsOffered(dimension, units), chosen = localStorage.getItem(key(kind, field))
  if (chosen !== null && offered.includes(chosen)) return chosen
  return neverGuessed.includes(dimension) ? '' : offered[0] ?? ''
}
export const rememberUnit = (kind: string, field: string, unit: string): void => localStorage.setItem(key(kind, field), unit)
