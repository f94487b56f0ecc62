import { convert } from '@lodebook/reckon/units'

/** How the crew wants answers put. */
export interface CrewUnits { readonly length: 'm' | 'ft', readonly grade: 'g/t' | 'ozt/short ton', readonly rock: 't' | 'short ton' }

export const metric: CrewUnits = { length: 'm', grade: 'g/t', rock: 't' }
export const imperial: CrewUnits = { length: 'ft', grade: 'ozt/short ton', rock: 'short ton' }

/** A number with so many significant figures, thousands parted, no more precision than it has. */
export function figure(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return 'not known'
  if (value === 0) return '0'
  const places = Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value))))
  const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.abs(value))) + 1 - digits)
  const rounded = places === 0 ? Math.round(value / step) * step : value
  const text = Math.abs(rounded).toFixed(Math.min(places, 12))
  const [whole = '', fraction] = text.split('.')
  const parted = whole.replace(/\B(?=(\d{3})+$)/g, ',')
  return `${rounded < 0 && Number(text) !== 0 ? '−' : ''}${parted}${fraction ? `.${fraction}` : ''}`
}

export const unitWords: Readonly<Record<string, string>> = { 'ozt/short ton': 'oz/ton', 'short ton': 'tons' }

const inUnit = (value: number, from: string, to: string, digits: number) => `${figure(convert(value, from, to), digits)} ${unitWords[to] ?? to}`

/** Metres, grams a tonne, tonnes in the crew's units. */
export const length = (metres: number, units: CrewUnits, digits = 3): string => inUnit(metres, 'm', units.length, digits)
export const grade = (gramsPerTonne: number, units: CrewUnits, digits = 2): string => inUnit(gramsPerTonne, 'g/t', units.grade, digits)
export const rock = (tonnes: number, units: CrewUnits, digits = 2): string => inUnit(tonnes, 't', units.rock, digits)

export const volume = (cubicMetres: number, units: CrewUnits, digits = 3): string =>
  units.length === 'ft' ? `${figure(convert(cubicMetres, 'm3', 'ft3'), digits)} ft³` : `${figure(cubicMetres, digits)} m³`
export const area = (squareMetres: number, units: CrewUnits, digits = 3): string =>
  units.length === 'ft' ? `${figure(convert(squareMetres, 'm2', 'ft2'), digits)} ft²` : `${figure(squareMetres, digits)} m²`
/** What a person lifts or pushes. */
export const heft = (kilograms: number, units: CrewUnits, digits = 2): string =>
  units.length === 'ft' ? `${figure(convert(kilograms, 'kg', 'lb'), digits)} lb` : `${figure(kilograms, digits)} kg`
/** Cubic metres a second, degrees Celsius in the crew's units. */
export const flow = (cubicMetresASecond: number, units: CrewUnits, digits = 2): string =>
  units.length === 'ft' ? `${figure(convert(cubicMetresASecond, 'm3/s', 'cfm'), digits)} cfm` : `${figure(cubicMetresASecond, digits)} m³/s`
export const temperature = (celsius: number, units: CrewUnits): string => units.length === 'ft' ? `${Math.round(celsius * 1.8 + 32)} °F` : `${figure(celsius, 2)} °C`

/** A number as one would write it by hand: up to so many figures, no noughts at its end. */
export const plain = (value: number, digits = 3): string => figure(value, digits).replace(/(\.\d*?)0+$/, '$1').replace(/\.$/, '')

/**
 * Money: two figures below a hundred, three above; or, where `places` is given, so many decimals, a thousand and more to three figures all the same.
 */
export const money = (amount: number, currency: string, places?: number): string => {
  const sign = currency === 'USD' ? '$' : `${currency} `
  const size = Math.abs(amount)
  const text = places !== undefined && size < 1000 ? size.toFixed(places) : figure(size, size < 100 ? 2 : 3)
  return `${amount < 0 && /[1-9]/.test(text) ? '−' : ''}${sign}${text}`
}

export const azimuth = (degrees: number): string => `${String(Math.round(((degrees % 360) + 360) % 360) % 360).padStart(3, '0')}°`
export const angle = (degrees: number): string => `${figure(degrees, 2)}°`
export const plural = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`
