import { readDegrees } from './sexagesimal.ts'
import type { DecimalMark } from './read-number.ts'
import { compare, negate, rational, type Rational } from './rational.ts'
import { read, refuse, type Reading } from './reading.ts'

/**
 * Reads a signed angle in degrees: `-12`, `-12°`, `+5.5`, `-12-30` (12 degrees 30 minutes down).
 * @param text  plain text
 */
export function readAngle(text: string, decimal: DecimalMark = '.'): Reading<Rational> {
  const [, sign = '', size = ''] = /^([+-]?) ?(.*)$/.exec(text) ?? []
  if (/[ns]\s*[ew]$|\d[°'"]? ?[nsew]$/i.test(size)) return refuse('write the angle alone, a turn to the west or down with a minus')
  const value = readDegrees(size, decimal)
  return value.ok && sign === '-' ? read(negate(value.value)) : value
}

/**
 * Reads an angle above (+) or below (-) level, degrees in [-90, 90]: as {@link readAngle}, and `12° down`, `up 5`, `level`.
 * @param text  plain text
 */
export function readInclination(text: string, decimal: DecimalMark = '.'): Reading<Rational> {
  if (/^(?:level|horizontal|flat)$/i.test(text)) return read(rational('0'))
  if (/^(?:vertical|plumb)$/i.test(text)) return refuse('up or down? write 90 or -90')
  if (/%$/.test(text)) return refuse('that is a slope; write the angle in degrees (5 % is 2.9°)')
  const word = /^(up|down|dn|u|d)\b ?(?=[^ ])|(?<=[\d°'"]) ?(up|down|dn|u|d)$/i.exec(text)
  const bare = word ? text.replace(word[0], '').trim() : text
  if (word && /^[+-]/.test(bare)) return refuse(`a sign and '${(word[1] ?? word[2] ?? '').toLowerCase()}' together can be read two ways; write one of them`)
  const value = readAngle(bare, decimal)
  if (!value.ok) return value
  const signed = word && /^d/i.test(word[1] ?? word[2] ?? '') ? negate(value.value) : value.value
  const ninety = rational('90')
  return compare(signed, ninety) > 0 || compare(negate(signed), ninety) > 0 ? refuse('an inclination is -90 (straight down) to 90 (straight up)') : read(signed)
}
