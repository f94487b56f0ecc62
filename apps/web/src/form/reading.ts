import type { Field, FieldValue, Kind } from '@lodebook/book'
import type { InputOptions } from '@lodebook/book/input'
import { readField } from '@lodebook/book/input'
import { checkValue } from '@lodebook/book/schema'
import type { Texts } from '../bookkeeper/desk.ts'
import { fieldText, comesTo } from '../words/field-text.ts'

/** How one field as typed was understood. */
export interface FieldReading {
  readonly value?: FieldValue
  /** '4' 7½" = 1.410 m'; '' when it says nothing that the text does not. */
  readonly echo: string
  /** Why it can't be read, in one sentence. */
  readonly problem: string
}

const nothing: FieldReading = { echo: '', problem: '' }

/** Reads one field while it is being typed: the same reader and limits as at every other door. */
export function reading(name: string, field: Field, typed: string, options: InputOptions): FieldReading {
  const text = typed.trim()
  if (text === '') return nothing
  if (field.is.type === 'blob') return { value: JSON.parse(text) as FieldValue, echo: '', problem: '' }
  const read = readField(field, text, options, name)
  if (!read.ok) return { echo: '', problem: sentence(read.expected, read.why) }
  const wrong = checkValue(field, read.value, name)
  if (wrong) return { echo: '', problem: wrong.message }
  return { value: read.value, echo: echoOf(field, text, read.value), problem: '' }
}

const sentence = (expected: string, why: string | undefined): string =>
  why === undefined ? `Expected ${expected}.` : `${why.charAt(0).toUpperCase()}${why.slice(1)}. Expected ${expected}.`

function echoOf(field: Field, text: string, value: FieldValue): string {
  if (typeof value === 'object' && 'unit' in value) return `${text} = ${comesTo(value)}`
  if (field.is.type === 'places' || field.is.type === 'place') return fieldText(value, field)
  if (field.is.type === 'money') return typeof value === 'object' && 'amount' in value ? `${value.amount} ${value.currency}` : ''
  if (typeof value === 'object' && 'line' in value) return `${value.line.length} points, ${comesTo({ text: '', value: value.line.at(-1)![0] - value.line[0]![0], unit: 'm' })} across`
  if (field.is.type === 'colours') return fieldText(value, field)
  return ''
}

/** The values of all fields that could be read, and the names of those that could not. */
export function readAll(kind: Kind, texts: Texts, options: InputOptions): { readonly set: Record<string, FieldValue>, readonly unread: readonly string[] } {
  const set: Record<string, FieldValue> = {}, unread: string[] = []
  for (const [name, field] of Object.entries(kind.fields)) {
    const { value, problem } = reading(name, field, texts[name] ?? '', options)
    if (value !== undefined) set[name] = value
    if (problem !== '') unread.push(name)
  }
  return { set, unread }
}
