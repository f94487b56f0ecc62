import { convert } from '@lodebook/reckon/units'
import type { BookState } from '../bookkeeper/desk.ts'
import { figures, toStep, withUnit } from './number.ts'

type Units = BookState['units']
const imperial: Readonly<Record<string, { readonly to: string, readonly say: string }>> = {
  m: { to: 'ft', say: 'ft' }, m2: { to: 'ft2', say: 'ft²' }, 'm²': { to: 'ft2', say: 'ft²' }, m3: { to: 'ft3', say: 'ft³' }, t: { to: 'short ton', say: 'tons' }, 'g/t': { to: 'ozt/short ton', say: 'oz/ton' },
  'm3/s': { to: 'cfm', say: 'cfm' }, C: { to: 'F', say: '°F' },
}
const written: Readonly<Record<string, string>> = { 'm²': 'm2', 'm³': 'm3' }

/** A value in the unit that the crew speaks. Money, ounces and angles are the same for all. */
export function crewValue(value: number, unit: string, units: Units): { readonly value: number, readonly unit: string } {
  const other = units === 'feet and oz/ton' ? imperial[unit] : undefined
  return other ? { value: convert(value, written[unit] ?? unit, other.to), unit: other.say } : { value, unit }
}

/**
 * A figure as the crew would say it: '12.4 g/t' or '0.362 oz/ton', '$173 a day'.
 * @param step  what it is rounded to, in the crew's unit; three significant figures when left out
 * @param bare  without its unit
 */
export function crewText(value: number, unit: string | undefined, units: Units, step?: number, bare = false): string {
  const priced = /^([A-Z]{3})\b(.*)$/.exec(unit ?? '')
  if (priced) return `${moneyText(value, priced[1]!, step)}${bare ? '' : priced[2]!}`
  const said = unit === undefined ? { value, unit: '' } : crewValue(value, unit, units)
  const text = step === undefined ? figures(said.value) : toStep(said.value, step)
  return bare ? text : withUnit(text, said.unit)
}

/** Money to the nearest whole unit, or to a step: '$150', '−$30', 'CAD 1,200'. */
export function moneyText(amount: number, currency: string, step = 1): string {
  const sign = currency === 'USD' ? '$' : `${currency} `, text = toStep(Math.abs(amount), Math.max(step, 0.01))
  return `${amount < 0 && /[1-9]/.test(text) ? '\u2212' : ''}${sign}${text}`
}

/** The unit alone, as the crew says it. */
export const crewUnit = (unit: string, units: Units): string => crewValue(1, unit, units).unit
