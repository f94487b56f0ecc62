import type { Dimension } from '@lodebook/reckon/units'

/**
 * What a field of an entry can hold. One description serves every door: the schema that checks it, the column that imports it,
 * the form that asks for it, and the words of an error.
 */
export type FieldType =
  | { readonly type: 'text', readonly unique?: boolean } // one line, trimmed, not empty
  | { readonly type: 'note' } // many lines
  | { readonly type: 'yes-no' }
  | { readonly type: 'count' } // whole, >= 0
  | { readonly type: 'number', readonly min?: number, readonly max?: number }
  | { readonly type: 'choice', readonly of: readonly string[], readonly also?: Readonly<Record<string, string>> } // `also`: other words for some of them
  | { readonly type: 'choices', readonly of: readonly string[] }
  | { readonly type: 'words' } // a list of the crew's own short words, or of people
  | { readonly type: 'date', readonly future?: boolean } // YYYY-MM-DD
  | { readonly type: 'moment', readonly future?: boolean } // ISO 8601 with offset
  | { readonly type: 'year' }
  | { readonly type: 'quantity', readonly dimension: Dimension, readonly min?: number, readonly above?: number, readonly max?: number, readonly marks?: boolean, readonly toward?: boolean }
  | { readonly type: 'money' } // { text, amount, currency }
  | { readonly type: 'station' } // a station's name
  | { readonly type: 'stations' } // names in order
  | { readonly type: 'ref', readonly to: string } // an entry of that kind, by id; '*' any
  | { readonly type: 'place' }
  | { readonly type: 'places' }
  | { readonly type: 'colours' } // gold seen in a pan, by size class
  | { readonly type: 'ground-line' } // points across as distance / height
  | { readonly type: 'blob' } // a file kept beside the book, by its SHA-256

export interface Field {
  readonly label: string
  readonly is: FieldType
  readonly required?: boolean
  /** Another field that may stand in place of this one, though it is required. */
  readonly unless?: string
  /** One short line for the person who fills it in. */
  readonly hint?: string
  /** Other headings under which a file may carry this field; matched without case, spaces and punctuation. */
  readonly headings?: readonly string[]
}

export interface Kind {
  readonly id: string
  readonly label: string
  readonly plural: string
  /** Which of its fields name one entry to a person: bag B-017, shot A6 to A7. */
  readonly title: readonly string[]
  readonly fields: Readonly<Record<string, Field>>
}

type Extra = Omit<Field, 'label' | 'is'>
const field = (is: FieldType) => (label: string, extra: Extra = {}): Field => ({ label, is, ...extra })
const quantity = (dimension: Dimension, limits: { min?: number, above?: number, max?: number, marks?: boolean, toward?: boolean } = {}) =>
  field({ type: 'quantity', dimension, ...limits })

export const text = field({ type: 'text' })
export const uniqueText = field({ type: 'text', unique: true })
export const note = field({ type: 'note' })
export const yesNo = field({ type: 'yes-no' })
export const count = field({ type: 'count' })
export const words = field({ type: 'words' })
export const date = field({ type: 'date' })
export const moment = field({ type: 'moment' })
export const futureMoment = field({ type: 'moment', future: true })
export const year = field({ type: 'year' })
export const money = field({ type: 'money' })
export const station = field({ type: 'station' })
export const stations = field({ type: 'stations' })
export const place = field({ type: 'place' })
export const places = field({ type: 'places' })
export const colours = field({ type: 'colours' })
export const groundLine = field({ type: 'ground-line' })
export const blob = field({ type: 'blob' })
export const number = (label: string, limits: { min?: number, max?: number } = {}, extra: Extra = {}) =>
  field({ type: 'number', ...limits })(label, extra)
export const choice = (label: string, of: readonly string[], extra: Extra = {}) => field({ type: 'choice', of })(label, extra)
/** A choice of which some go by other words as well. */
export const choiceAlso = (label: string, of: readonly string[], also: Readonly<Record<string, string>>, extra: Extra = {}) =>
  field({ type: 'choice', of, also })(label, extra)
export const choices = (label: string, of: readonly string[], extra: Extra = {}) => field({ type: 'choices', of })(label, extra)
export const ref = (label: string, to: string, extra: Extra = {}) => field({ type: 'ref', to })(label, extra)

export const distance = quantity('length', { above: 0 })
export const offset = quantity('length', { min: 0 })
export const height = quantity('length')
export const azimuth = quantity('azimuth', { min: 0, max: 360 })
export const inclination = quantity('inclination', { min: -90, max: 90 })
export const dip = quantity('angle', { min: 0, max: 90 })
/** A dip that may be written with the side it goes down to: `62 SE`. */
export const dipOfPlane = quantity('angle', { min: 0, max: 90, toward: true })
export const rake = quantity('angle', { min: 0, max: 180 })
export const anyAngle = quantity('angle')
export const area = quantity('area', { above: 0 })
export const volume = quantity('volume', { above: 0 })
export const mass = quantity('mass', { above: 0, marks: true })
export const massOrNil = quantity('mass', { min: 0, marks: true })
export const grade = quantity('grade', { min: 0, marks: true })
export const density = quantity('density', { above: 0 })
export const percent = quantity('percent', { min: 0, max: 100, marks: true })
export const concentration = quantity('concentration', { min: 0, marks: true })
export const radon = quantity('radon', { min: 0, marks: true })
export const pressure = quantity('pressure', { above: 0 })
export const temperature = quantity('temperature', { min: -60, max: 70 })
export const speed = quantity('speed', { min: 0 })
export const hours = quantity('duration', { above: 0 })
export const flow = quantity('flow', { above: 0 })

export const kind = (id: string, label: string, plural: string, title: readonly string[], fields: Record<string, Field>): Kind =>
  ({ id, label, plural, title, fields })
