import { findUnit, toBase } from './find-unit.ts'
import { numberPattern, readNumber, type DecimalMark } from './read-number.ts'
import { add, rational, type Rational } from './rational.ts'
import { read, refuse, type Reading } from './reading.ts'

const dms = /^(\d{1,3}) ?(?:°|deg(?:rees)?|d| |-|:) ?(\d{1,2}(?:\.\d+)?) ?(?:'|min|m|$|(?= |-|:))(?:(?: |-|:| - )?(\d{1,2}(?:\.\d+)?) ?(?:"|sec|s|$))?$/i
const plain = new RegExp(`^(${numberPattern}) ?(.*)$`, 'i')

/**
 * Reads an angle without a sign, in degrees: `203`, `23.5°`, `126-55-17`, `19 46 00`, `12°30'`, `50 gon`.
 * @param text  plain text
 */
export function readDegrees(text: string, decimal: DecimalMark = '.'): Reading<Rational> {
  const parts = dms.exec(text)
  if (parts) {
    const [, degrees = '', minutes = '', seconds] = parts
    if (Number(minutes) >= 60) return refuse(`${minutes} minutes: minutes stop at 59`)
    if (Number(seconds ?? 0) >= 60) return refuse(`${seconds ?? ''} seconds: seconds stop at 59`)
    if (seconds !== undefined && minutes.includes('.')) return refuse('minutes have a decimal and seconds stand beside them')
    return read(add(add(rational(degrees), rational(`${minutes}/60`)), rational(`${seconds ?? '0'}/3600`)))
  }
  const [, number, unit = ''] = plain.exec(text) ?? []
  if (number === undefined) return refuse('there is no angle in it')
  const value = readNumber(number, decimal)
  if (!value.ok) return value
  const known = findUnit(unit === '' ? 'deg' : unit, 'angle')
  if (!known) return refuse(`'${unit}' after the number is not a unit of angle`)
  return read(toBase(value.value, known))
}
