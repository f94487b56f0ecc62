import { readDegrees } from './sexagesimal.ts'
import type { DecimalMark } from './read-number.ts'
import { add, compare, negate, rational, type Rational } from './rational.ts'
import { read, refuse, type Reading } from './reading.ts'

const points = ['n', 'nne', 'ne', 'ene', 'e', 'ese', 'se', 'sse', 's', 'ssw', 'sw', 'wsw', 'w', 'wnw', 'nw', 'nnw']
const full = rational('360')
const half = rational('180')
const quarter = rational('90')

/**
 * Reads a direction clockwise from north, degrees in [0, 360): `203`, `126-55-17`, `N 23 E`, `S68-05-35W`, `N19 46 00 W`, `N`, `SSW`.
 * A written 360 is 0. Anything outside [0, 360] is refused.
 * @param text  plain text
 */
export function readAzimuthText(text: string, decimal: DecimalMark = '.'): Reading<Rational> {
  const letters = text.toLowerCase().replace(/north/g, 'n').replace(/south/g, 's').replace(/east/g, 'e').replace(/west/g, 'w')
    .replace(/^due /, '')
  const point = points.indexOf(letters.replace(/[ -]/g, ''))
  if (point >= 0) return read(rational(String(point * 22.5)))
  const quadrant = /^([ns])[ -]?(.+?)[ -]?([ew])$/.exec(letters)
  if (quadrant) {
    const [, from, inner = '', toward] = quadrant
    const turn = readDegrees(inner, decimal)
    if (!turn.ok) return turn
    if (compare(turn.value, rational('0')) < 0 || compare(turn.value, quarter) > 0) return refuse('an angle from north or south towards east or west is 0 to 90')
    return read(wrap(from === 'n'
      ? toward === 'e' ? turn.value : add(full, negate(turn.value))
      : add(half, toward === 'e' ? negate(turn.value) : turn.value)))
  }
  if (/^[ew].*\d.*[ns]$/.test(letters)) return refuse('start from north or south, as in N 23 E')
  if (/\d[°'"]? ?(?:t|m|g|mag|magnetic|true|grid)$/.test(letters)) return refuse('write the number alone; which north it is from has its own field')
  const value = readDegrees(text, decimal)
  if (!value.ok) return value
  const [below, above] = [compare(value.value, rational('0')) < 0, compare(value.value, full) > 0]
  return below || above ? refuse('an azimuth is 0 to 360, clockwise from north') : read(wrap(value.value))
}

const wrap = (angle: Rational): Rational => compare(angle, full) === 0 ? rational('0') : angle
