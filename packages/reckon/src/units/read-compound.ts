import type { Dimension } from './dimension.ts'
import { findUnit, toBase } from './find-unit.ts'
import { numberPattern, readNumber, type DecimalMark } from './read-number.ts'
import { add, compare, rational, type Rational } from './rational.ts'
import { read, refuse, type Reading } from './reading.ts'

interface Step { readonly is: RegExp, readonly unit: string, /** How many of it make one of the step above. */ readonly per: string }
/** Units written one after another, largest first. */
const ladders: readonly (readonly [Dimension, readonly Step[]])[] = [
  ['length', [{ is: /^(?:yds?|yards?)$/, unit: 'yd', per: '' }, { is: /^(?:ft|foot|feet|')$/, unit: 'ft', per: '3' }, { is: /^(?:ins?|inch|inches|")$/, unit: 'in', per: '12' }]],
  ['length', [{ is: /^m$/, unit: 'm', per: '' }, { is: /^cm$/, unit: 'cm', per: '100' }, { is: /^mm$/, unit: 'mm', per: '10' }]],
  ['mass', [{ is: /^(?:ozt?|ounces?)$/, unit: 'ozt', per: '' }, { is: /^dwts?$/, unit: 'dwt', per: '20' }, { is: /^(?:grs?|grains?)$/, unit: 'grain', per: '24' }]],
  ['mass', [{ is: /^(?:lbs?|pounds?)$/, unit: 'lb', per: '' }, { is: /^(?:oz|ounces?)$/, unit: 'oz av', per: '16' }]],
  ['mass', [{ is: /^t$/, unit: 't', per: '' }, { is: /^kg$/, unit: 'kg', per: '1000' }, { is: /^g$/, unit: 'g', per: '1000' }]],
  ['duration', [{ is: /^(?:h|hrs?|hours?|:)$/, unit: 'h', per: '' }, { is: /^(?:mins?|minutes?|m|:)$/, unit: 'min', per: '60' }, { is: /^(?:s|secs?)$/, unit: 's', per: '60' }]],
]

const piece = new RegExp(`^[ ,]*(?:-(?=\\d))?(?:and )?(${numberPattern}) ?([a-z]+|['":])?\\.?`, 'i')

/**
 * Reads a value written in several units: `4 ft 7 1/2 in`, `4'7½"`, `1 m 41`, `29 oz 15 dwt 8 gr`, `8:30`. The whole is exact.
 * All but the last number are whole, each smaller unit stays below one of the larger, and a last number without a unit is the next smaller one.
 * @param text  plain text without a sign
 * @returns the base value, undefined when the text is not of this shape
 */
export function readCompound(text: string, dimension: Dimension, decimal: DecimalMark = '.'): Reading<Rational> | undefined {
  const pieces = split(text)
  if (!pieces || pieces.length < 2) return undefined
  for (const [of, steps] of ladders) {
    if (of !== dimension) continue
    const start = steps.findIndex(step => step.is.test(pieces[0]?.unit ?? ''))
    const fits = start >= 0 && pieces.length <= steps.length - start && pieces.every(({ unit }, i) =>
      unit === '' ? i === pieces.length - 1 : steps[start + i]?.is.test(unit) === true)
    if (fits) return sum(pieces, steps.slice(start), dimension, decimal)
  }
  return undefined
}

interface Piece { readonly number: string, readonly unit: string }

function split(text: string): readonly Piece[] | undefined {
  const pieces: Piece[] = []
  for (let rest = text; rest !== '';) {
    const found = piece.exec(rest)
    if (!found) return undefined
    pieces.push({ number: found[1]?.trim() ?? '', unit: found[2]?.toLowerCase() ?? '' })
    rest = rest.slice(found[0].length).trim()
  }
  return pieces
}

function sum(pieces: readonly Piece[], steps: readonly Step[], dimension: Dimension, decimal: DecimalMark): Reading<Rational> {
  let total = rational('0')
  for (const [i, { number, unit }] of pieces.entries()) {
    const step = steps[i]
    const known = step && findUnit(step.unit, dimension)
    if (!step || !known) return refuse('it does not read as one value')
    if (/^[+-]/.test(number)) return refuse('a sign stands in the middle of it')
    const value = readNumber(number, decimal)
    if (!value.ok) return value
    if (i < pieces.length - 1 && value.value.over % value.value.under !== 0n) return refuse(`${number} ${step.unit} is not whole and a smaller unit stands beside it`)
    if (i > 0 && compare(value.value, rational(step.per)) >= 0) return refuse(`${number} ${step.unit} is ${step.per} ${step.unit} or more; carry it over`)
    if (unit === '' && step.unit !== 'in' && !/^\d\d(?:\.\d+)?$/.test(number)) return refuse(`${number} of what? write the unit after it`)
    total = add(total, toBase(value.value, known))
  }
  return read(total)
}
