import { parseNumber } from '@lodebook/reckon/units'
import type { DecimalMark, Dimension } from '@lodebook/reckon/units'
import type { Field } from '../kinds/index.ts'
import type { FieldValue } from '../values.ts'
import { choose, readYesNo } from './choose.ts'
import { readColours } from './colours.ts'
import { readGroundLine } from './ground-line.ts'
import { readMoney } from './money.ts'
import { readPlace } from './place.ts'
import { readQuantity } from './read-quantity.ts'
import type { Read } from './read.ts'
import { says, wants } from './read.ts'
import { readDate, readMoment } from './time.ts'

/** What is taken for granted where the written text does not say it. */
export interface InputOptions {
  /** The crew's usual units, by dimension: `{ length: 'ft' }`. */
  readonly units?: Partial<Record<Dimension, string>>
  /** Units of single fields, such as those that stand in a column's heading; they go before `units`. */
  readonly fieldUnits?: Readonly<Record<string, string>>
  /** How tenths are written; `.` unless said. */
  readonly decimal?: DecimalMark
  /** Three letters. */
  readonly currency?: string
  /** Offset from UTC of times written without one: `-07:00`. */
  readonly offset?: string
  /** What one grain of a class weighs, milligrams. */
  readonly colourMg?: Readonly<Record<string, number>>
  /** Stations of the book. */
  readonly stations?: ReadonlySet<string>
}

/**
 * Reads one field from plain text, trimmed and not empty. Limits are left to checkValue.
 * @param name  the field's name, by which `fieldUnits` gives it a unit
 */
export function readField(field: Field, text: string, options: InputOptions, name: string): Read<FieldValue> {
  const { is } = field
  const unit = (dimension: Dimension) => options.fieldUnits?.[name] ?? options.units?.[dimension]
  const lengthUnit = unit('length')
  const placeOptions = { ...(lengthUnit === undefined ? {} : { unit: lengthUnit }), ...(options.stations ? { stations: options.stations } : {}) }
  switch (is.type) {
    case 'text': case 'note': case 'station': case 'ref': return says(text)
    case 'yes-no': return readYesNo(text)
    case 'count': return whole(text, 'a whole number of zero or more')
    case 'year': return whole(text, 'a year such as 1897')
    case 'number': return decimal(text, options)
    case 'choice': return choose(text, is.of, is.also)
    case 'choices': return every(divide(text, /[,;\n]/), word => choose(word, is.of))
    case 'words': return says(divide(text, /[,;\n]/))
    case 'stations': return says(divide(text, /[,;\n>→]/.test(text) ? /[,;\n→]|-?>/ : /\s/))
    case 'date': return readDate(text)
    case 'moment': return readMoment(text, options.offset)
    case 'quantity': {
      const assumed = unit(is.dimension)
      const parsed = readQuantity(is, text, { ...(assumed === undefined ? {} : { defaultUnit: assumed }), ...decimalMark(options) })
      return parsed.ok ? says(parsed.quantity) : wants(parsed.problem.expected, parsed.problem.why)
    }
    case 'money': return readMoney(text, options.currency, options.decimal)
    case 'place': return readPlace(text, placeOptions)
    case 'places': return every(divide(text, /[;\n]/), part => readPlace(part, placeOptions))
    case 'colours': return readColours(text, options.colourMg)
    case 'ground-line': return readGroundLine(text, unit('length'))
    case 'blob': return wants('a picture or another file, which cannot be written as text')
  }
}

const divide = (text: string, at: RegExp): readonly string[] => text.split(at).map(part => part.trim()).filter(part => part !== '')

function every<T>(parts: readonly string[], read: (part: string) => Read<T>): Read<readonly T[]> {
  const values: T[] = []
  for (const part of parts) {
    const one = read(part)
    if (!one.ok) return wants(one.expected, one.why ?? `because ${JSON.stringify(part)} is in it`)
    values.push(one.value)
  }
  return says(values)
}

const whole = (text: string, expected: string): Read<number> =>
  /^\d{1,3}(,\d{3})+$|^\d{1,15}$/.test(text) ? says(Number(text.replaceAll(',', ''))) : wants(expected)

const decimalMark = ({ decimal }: InputOptions) => decimal === undefined ? {} : { decimal }

function decimal(text: string, options: InputOptions): Read<number> {
  const parsed = parseNumber(text, decimalMark(options))
  return parsed.ok ? says(parsed.value) : wants(parsed.problem.expected, parsed.problem.why)
}
