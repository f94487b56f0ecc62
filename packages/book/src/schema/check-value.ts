import type { Dimension, Quantity } from '@lodebook/reckon/units'
import type { Field, FieldType } from '../kinds/index.ts'
import { readGroundLine } from '../input/ground-line.ts'
import { readMoney } from '../input/money.ts'
import { readPlace } from '../input/place.ts'
import type { Read } from '../input/read.ts'
import type { Place } from '../place.ts'
import type { GroundLine, Money } from '../values.ts'
import { z } from 'zod'
import { checkQuantity } from './check-quantity.ts'
import { checkShape } from './from-zod.ts'
import type { Problem } from './problem.ts'
import { refuse } from './problem.ts'
import { numberWords, within } from './quantity-limits.ts'
import { isDate, momentMs } from './times.ts'
import { blobSchema, colourSchema, groundLineSchema, lineSchema, moneySchema, noteSchema, placeSchema, stationSchema } from './value-schemas.ts'

/**
 * Checks one value against its field: its type, its own limits, and that what was written says what is stored.
 * It looks at nothing else: no other field, no book, no clock, so the answer is the same at every door and at any time.
 * @param name  the field's name in its kind, for the problem's path
 */
export function checkValue(field: Field, value: unknown, name = ''): Problem | undefined {
  return byType(field.is, name, field.label, value)
}

function byType(is: FieldType, name: string, label: string, value: unknown): Problem | undefined {
  const shape = (schema: z.ZodType) => checkShape(schema, name, label, value)
  switch (is.type) {
    case 'text': return shape(lineSchema)
    case 'note': return shape(noteSchema)
    case 'yes-no': return shape(z.boolean())
    case 'count': return shape(z.int('a whole number of zero or more').min(0, 'a whole number of zero or more'))
    case 'number': return typeof value === 'number' && within(value, is) ? undefined : refuse(name, label, value, numberWords(is))
    case 'choice': return is.of.includes(value as string) ? undefined : refuse(name, label, value, `one of ${is.of.join(', ')}`)
    case 'choices': return list(value, name, label, z.enum(is.of as [string, ...string[]], `one of ${is.of.join(', ')}`))
    case 'words': return list(value, name, label, lineSchema)
    case 'stations': return list(value, name, label, stationSchema, true)
    case 'station': return shape(stationSchema)
    case 'ref': return shape(lineSchema)
    case 'date': return typeof value === 'string' && isDate(value) ? undefined : refuse(name, label, value, 'a date such as 2026-05-03')
    case 'moment': return typeof value === 'string' && momentMs(value) !== undefined ? undefined
      : refuse(name, label, value, 'a date, time and offset such as 2026-05-03T07:30-07:00')
    case 'year': return shape(z.int('a year such as 1897').min(1000, 'a year from 1000 on').max(2199, 'a year before 2200'))
    case 'quantity': return checkQuantity(is, name, label, value)
    case 'money': return shape(moneySchema) ?? checkMoney(name, label, value as Money)
    case 'place': return checkPlace(name, label, value)
    case 'places': return Array.isArray(value) && value.length > 0
      ? first(value, (place, i) => checkPlace(`${name}[${i}]`, label, place))
      : refuse(name, label, value, 'a list of places')
    case 'colours': return shape(z.array(colourSchema))
    case 'ground-line': return shape(groundLineSchema) ?? checkGroundLine(name, label, value as GroundLine)
    case 'blob': return shape(blobSchema)
  }
}

/** A list of short words, each once unless repeats are a part of the meaning, as in a chain of stations that closes on itself. */
function list(value: unknown, name: string, label: string, item: z.ZodType<string>, repeats = false): Problem | undefined {
  const misshapen = checkShape(z.array(item).min(1, 'at least one'), name, label, value)
  if (misshapen || repeats) return misshapen
  const twice = (value as string[]).findIndex((word, i, all) => all.indexOf(word) < i)
  return twice < 0 ? undefined : refuse(`${name}[${twice}]`, label, (value as string[])[twice], 'each only once')
}

function checkGroundLine(name: string, label: string, { text, line }: GroundLine): Problem | undefined {
  const said = readGroundLine(text)
  if (!said.ok) return refuse(name, label, text, said.expected, said.why)
  return JSON.stringify(said.value.line) === JSON.stringify(line) ? undefined : refuse(`${name}.line`, label, text, 'the points that its text says')
}

function checkMoney(name: string, label: string, money: Money): Problem | undefined {
  const agrees = (said: Read<Money>) => said.ok && said.value.amount === money.amount && said.value.currency === money.currency
  const said = readMoney(money.text, money.currency)
  if (agrees(said) || agrees(readMoney(money.text, money.currency, ','))) return undefined
  return !said.ok ? refuse(name, label, money, said.expected, said.why)
    : refuse(`${name}.amount`, label, money.amount, `${said.value.amount} ${said.value.currency}, which is what ${JSON.stringify(money.text)} says`)
}

/** A place kept with its text must be where that text says. */
function checkPlaceText(name: string, label: string, place: Place & { readonly text?: string }): Problem | undefined {
  if (place.text === undefined) return undefined
  const said = readPlace(place.text)
  const same = said.ok && Object.entries(place).every(([part, value]) => part === 'text' || said.value[part as keyof Place] === value)
  return same ? undefined : refuse(`${name}.text`, label, place.text, 'the place that its numbers say')
}

function checkPlace(name: string, label: string, value: unknown): Problem | undefined {
  const misshapen = checkShape(placeSchema, name, label, value)
  if (misshapen) return misshapen
  const place = value as Place
  const length = (part: string, quantity: Quantity | undefined, limits: { min?: number, above?: number } = {}) =>
    quantity && checkQuantity({ type: 'quantity', dimension: 'length' satisfies Dimension, ...limits }, `${name}.${part}`, `${label}, ${part}`, quantity)
  switch (place.by) {
    case 'station': return length('along', place.along, { min: 0 }) ?? length('height', place.height)
    case 'tapes': return length('first.distance', place.first.distance, { above: 0 }) ?? length('second.distance', place.second.distance, { above: 0 })
      ?? length('height', place.height)
    case 'grid': case 'gps': return checkPlaceText(name, label, place)
    case 'words': return undefined
  }
}

function first<T>(items: readonly T[], check: (item: T, at: number) => Problem | undefined): Problem | undefined {
  for (const [i, item] of items.entries()) {
    const problem = check(item, i)
    if (problem) return problem
  }
  return undefined
}
