import { finite, InputError } from '../core/index.ts'
import { convertWithin } from './convert.ts'
import { baseUnit, type Dimension, type Quantity } from './dimension.ts'
import { findUnit } from './find-unit.ts'

export interface FormatOptions {
  /** Any spelling of a unit; or `ft-in` for lengths, `quadrant` or `dms` for azimuths; the base unit when left out. */
  readonly unit?: string
  /** Decimals; significant figures for grade, mass and concentration; for `ft-in` the smallest fraction of an inch, 8 or 16 (0: whole inches). */
  readonly digits?: number
  /** Leave the unit off, as under a column heading that carries it. */
  readonly bare?: boolean
}

/** Decimals that a hand measurement in that unit can carry. */
const decimals: Readonly<Record<string, number>> = {
  m: 2, cm: 0, mm: 0, um: 0, ft: 2, in: 1, yd: 1, t: 2, '%': 1, deg: 1, C: 1, F: 0, Pa: 1, hPa: 1, kPa: 2, 'm/s': 2, 'ft/min': 0, h: 1, min: 0, L: 1,
}
const significant: readonly Dimension[] = ['grade', 'mass', 'concentration', 'radon', 'density', 'volume', 'area']
const shown: Readonly<Record<string, string>> = { C: '°C', F: '°F', deg: '°', '%': ' %', 'ozt/short ton': 'oz/ton', 'ozt/long ton': 'oz/long ton', 'ozt/tonne': 'oz/tonne',
  'dwt/short ton': 'dwt/ton', m2: 'm²', m3: 'm³', ft2: 'ft²', ft3: 'ft³', yd3: 'yd³', 't/m3': 't/m³', 'Bq/m3': 'Bq/m³' }

/**
 * A base value as text in the crew's unit, for a screen or a sheet: `1.41 m`, `4 ft 7 1/2 in`, `0.0439 oz/ton`, `N 23.0° E`.
 * Rounded to the nearest; thousands are set off by commas except in angles; the minus is U+2212. parseQuantity reads all of it back.
 * @param value  in the dimension's base unit, finite
 * @throws InputError for a value that is not finite or a unit that is not of the dimension
 */
export function format(value: number, dimension: Dimension, options: FormatOptions = {}): string {
  finite(value, 'value')
  const { unit = baseUnit[dimension], digits, bare = false } = options
  if (unit === 'ft-in' && dimension === 'length') return feetAndInches(value, digits ?? 8)
  if (unit === 'quadrant' && dimension === 'azimuth') return quadrant(value, digits ?? 1)
  if (unit === 'dms' && (dimension === 'azimuth' || dimension === 'inclination' || dimension === 'angle')) return sexagesimal(value, dimension)
  const known = findUnit(unit, dimension)
  if (!known) throw new InputError('unit', unit, `a unit of ${dimension}`)
  const number = convertWithin(value, baseUnit[dimension], unit, dimension)
  const turn = baseUnit[dimension] === 'deg'
  const text = digits === undefined && decimals[known.symbol] !== undefined ? fixed(number, decimals[known.symbol] ?? 0)
    : significant.includes(dimension) ? figures(number, digits ?? 3) : fixed(number, digits ?? 2)
  const wrapped = dimension === 'azimuth' && known.symbol === 'deg' && Number(text) >= 360 ? fixed(0, digits ?? 1) : text
  const body = turn ? wrapped : grouped(wrapped)
  const label = shown[known.symbol] ?? ` ${known.symbol}`
  return signed(body) + (bare ? '' : /^[ °]/.test(label) && !/^°[CF]/.test(label) ? label : ` ${label.trim()}`)
}

/** A quantity with its mark, in the crew's unit: `<0.0050 oz/ton`, `~2.00 m`, `trace`, `nil`. */
export function formatQuantity(quantity: Pick<Quantity, 'value' | 'mark'>, dimension: Dimension, options: FormatOptions = {}): string {
  if (quantity.mark === 'trace' || quantity.mark === 'nil' || quantity.value === null) return quantity.mark ?? 'trace'
  const sign = quantity.mark === 'below' ? '<' : quantity.mark === 'above' ? '>' : quantity.mark === 'about' ? '~' : ''
  return sign + format(quantity.value, dimension, options)
}

const fixed = (value: number, digits: number): string => {
  const text = Math.abs(value) < 1e21 ? value.toFixed(Math.min(Math.max(Math.trunc(digits), 0), 20)) : String(value)
  return Number(text) === 0 ? text.replace('-', '') : text
}

/** So many significant figures, written out without an exponent; whole digits are kept beyond them. */
function figures(value: number, digits: number): string {
  if (value === 0) return '0'
  const kept = Number(value.toPrecision(Math.min(Math.max(Math.trunc(digits), 1), 17)))
  return fixed(kept, Math.trunc(digits) - 1 - Math.floor(Math.log10(Math.abs(kept))))
}

const grouped = (text: string): string => text.replace(/^(-?)(\d{4,})/, (_, sign: string, whole: string) => sign + whole.replace(/\B(?=(?:\d{3})+$)/g, ','))
const signed = (text: string): string => text.replace('-', '\u2212')

function feetAndInches(metres: number, smallest: number): string {
  const part = Math.max(1, Math.trunc(smallest))
  const steps = Math.round(Math.abs(metres) / 0.0254 * part)
  const [feet, left] = [Math.floor(steps / (12 * part)), steps % (12 * part)]
  const [inches, top] = [Math.floor(left / part), left % part]
  const shared = common(top, part)
  const fraction = top === 0 ? '' : `${top / shared}/${part / shared}`
  const inch = [inches > 0 || fraction === '' ? String(inches) : '', fraction].filter(text => text !== '').join(' ')
  const sign = metres < 0 && steps > 0 ? '\u2212' : ''
  return sign + [feet > 0 ? `${grouped(String(feet))} ft` : '', inch === '0' && feet > 0 ? '' : `${inch} in`].filter(text => text !== '').join(' ')
}

const common = (a: number, b: number): number => b === 0 ? a || 1 : common(b, a % b)

function quadrant(azimuth: number, digits: number): string {
  const turn = ((azimuth % 360) + 360) % 360
  const fromNorth = turn <= 90 || turn >= 270
  const east = turn <= 180
  const angle = turn <= 90 ? turn : turn <= 180 ? 180 - turn : turn <= 270 ? turn - 180 : 360 - turn
  return `${fromNorth ? 'N' : 'S'} ${fixed(angle, digits)}° ${east ? 'E' : 'W'}`
}

function sexagesimal(angle: number, dimension: Dimension): string {
  const full = 360 * 3600
  const seconds = dimension === 'azimuth' ? Math.round(angle * 3600) % full : Math.round(Math.abs(angle) * 3600)
  const two = (value: number): string => String(value).padStart(2, '0')
  return `${angle < 0 && dimension !== 'azimuth' && seconds > 0 ? '\u2212' : ''}${Math.floor(seconds / 3600)}-${two(Math.floor(seconds / 60) % 60)}-${two(seconds % 60)}`
}
