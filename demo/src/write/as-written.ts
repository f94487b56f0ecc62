import type { Person } from './crew.ts'

/** How people write numbers in a field book: rounded as far as the tool is good for, in the writer's own units. */

const inch = 0.0254
const fraction: readonly (readonly [number, string])[] = [[0.25, '1/4'], [0.5, '1/2'], [0.75, '3/4']]

/** `14 ft 3 in`, `4 ft 7 1/2 in`, `9 1/2 in`. */
export function feetInches(metres: number, step = 0.5): string {
  const inches = Math.round(metres / inch / step) * step, feet = Math.floor(inches / 12), rest = inches - 12 * feet
  const part = fraction.find(([share]) => Math.abs(rest % 1 - share) < 1e-9)?.[1]
  const left = part === undefined ? `${Math.round(rest)}` : rest < 1 ? part : `${Math.floor(rest)} ${part}`
  return feet === 0 ? `${left} in` : rest === 0 ? `${feet} ft` : `${feet} ft ${left} in`
}
/** `4'7½"`. */
export function primes(metres: number): string {
  const halves = Math.round(metres / inch * 2), feet = Math.floor(halves / 24), rest = halves - 24 * feet, half = rest % 2 === 1 ? '½' : ''
  return `${feet}'${half !== '' && rest === 1 ? '' : Math.floor(rest / 2)}${half}"`
}
export const feet = (metres: number, digits = 1): string => `${(metres / 0.3048).toFixed(digits)} ft`
export const metres = (value: number, digits = 2): string => `${value.toFixed(digits)} m`
export const centimetres = (value: number): string => `${Math.round(value * 100)} cm`
export const inches = (value: number): string => `${(Math.round(value / inch * 2) / 2).toString()} in`

/** A taped distance as this person writes it; `turn` goes round the ways a person writes. */
export function distance(person: Person, value: number, turn = 0): string {
  if (person.lengths === 'metres') return metres(value)
  return turn % 4 === 3 ? primes(value) : turn % 7 === 5 ? feet(value) : feetInches(value)
}
/** A width of some inches or centimetres, taped across the vein. */
export const smallWidth = (person: Person, value: number, turn = 0): string =>
  person.lengths === 'metres' ? (turn % 3 === 0 ? metres(value) : centimetres(value)) : (turn % 3 === 0 ? feetInches(value) : inches(value))
/** Offsets to the walls are taken to the tenth of a foot or to 5 cm. */
export const roughly = (person: Person, value: number): string =>
  person.lengths === 'metres' ? metres(Math.max(0, Math.round(value * 20) / 20)) : feet(Math.max(0, value))

const half = (angle: number): number => Math.round(angle * 2) / 2

/** `306.5`, now and then `N 53.5 W`. */
export function azimuth(angle: number, quadrant = false): string {
  const a = half(((angle % 360) + 360) % 360) % 360
  if (!quadrant || a % 90 === 0) return `${a}`
  return a < 90 ? `N ${a} E` : a < 180 ? `S ${180 - a} E` : a < 270 ? `S ${a - 180} W` : `N ${360 - a} W`
}
/** `-12.5`, now and then `12.5 down`. */
export function inclination(angle: number, worded = false): string {
  const a = half(Math.max(-90, Math.min(90, angle)))
  return !worded || a === 0 ? `${a > 0 ? '+' : ''}${a}` : `${Math.abs(a)} ${a > 0 ? 'up' : 'down'}`
}
export const wholeDegrees = (angle: number): string => `${Math.round(angle)}`
/** A strike: three digits, as on a map. */
export const strikeText = (angle: number): string => `${Math.round(((angle % 360) + 360) % 360) % 360}`.padStart(3, '0')

/** A bag on the spring scale or the kitchen scale: `3.62 kg`, `7.9 lb`, `7 lb 14 oz`. */
export function bagMass(person: Person, grams: number, turn = 0): string {
  if (person.lengths === 'metres') return grams < 1000 ? `${Math.round(grams / 5) * 5} g` : `${(grams / 1000).toFixed(2)} kg`
  const ounces = Math.round(grams / 28.349523125), pounds = Math.floor(ounces / 16)
  return turn % 2 === 0 || pounds === 0 ? `${(grams / 453.59237).toFixed(2)} lb` : ounces === 16 * pounds ? `${pounds} lb` : `${pounds} lb ${ounces - 16 * pounds} oz`
}
/** Gold on the jeweller's scale, which reads to a milligram; heavier buttons in pennyweights now and then. */
export const goldMass = (mg: number, turn = 0): string => {
  const read = Math.round(mg)
  return read >= 150 && turn % 3 === 1 ? `${(read / 1555.17384).toFixed(3)} dwt` : turn % 3 === 2 ? `${(read / 1000).toFixed(3)} g` : `${read} mg`
}
