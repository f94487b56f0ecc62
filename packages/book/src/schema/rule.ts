import type { Fields } from '../values.ts'
import type { Quantity } from '@lodebook/reckon/units'
import { momentMs } from './times.ts'

/** What a rule may say: the field it is about, what was expected, and the sentence. `doubt` makes it a warning. */
export interface Finding { readonly field: string, readonly expected: string, readonly sentence: string, readonly doubt?: true }

/** A rule on the fields of one entry together. It sees only well-formed values and has nothing to say about fields that are missing. */
export type Rule = (fields: Fields) => Finding | undefined

const has = (fields: Fields, name: string): boolean => fields[name] !== undefined
const size = (value: unknown): number | undefined =>
  typeof value === 'number' ? value
    : typeof value === 'string' ? momentMs(value)
      : typeof value === 'object' && value !== null && 'value' in value ? (value as Quantity).value ?? undefined : undefined

/** When `field` is written (and is one of `values`, if given), `needs` must be too. */
export const needs = (field: string, values: readonly string[] | undefined, need: string, expected: string): Rule => fields =>
  has(fields, field) && (values === undefined || values.includes(fields[field] as string)) && !has(fields, need)
    ? { field: need, expected, sentence: `nothing is written; ${expected} is needed here` } : undefined

/** At least one of the groups of fields must be written in full. */
export const oneOf = (field: string, groups: readonly (readonly string[])[], expected: string, doubt = false): Rule => fields =>
  groups.some(group => group.every(name => has(fields, name))) ? undefined
    : { field, expected, sentence: `${expected} is ${doubt ? 'missing' : 'needed here'}`, ...(doubt ? { doubt: true as const } : {}) }

/** `low` may not exceed `high` when both are written; the finding is about `high` unless `at` names the other. */
export const ordered = (low: string, high: string, sentence: string, { at = high, doubt = false }: { at?: string, doubt?: boolean } = {}): Rule => (fields) => {
  const [a, b] = [size(fields[low]), size(fields[high])]
  return a === undefined || b === undefined || a <= b ? undefined
    : { field: at, expected: at === high ? `not less than ${low}` : `not more than ${high}`, sentence, ...(doubt ? { doubt: true as const } : {}) }
}

/** `later` must come after `earlier` when both are written. */
export const after = (earlier: string, later: string, sentence: string): Rule => (fields) => {
  const [a, b] = [size(fields[earlier]), size(fields[later])]
  return a === undefined || b === undefined || a < b ? undefined : { field: later, expected: `a time after ${earlier}`, sentence }
}

/** Two names that must differ. */
export const differ = (a: string, b: string, sentence: string): Rule => fields =>
  typeof fields[a] === 'string' && fields[a] === fields[b] ? { field: b, expected: `another than ${a}`, sentence } : undefined

/** Two fields that say the same thing in two ways. */
export const notBoth = (a: string, b: string, sentence: string): Rule => fields =>
  has(fields, a) && has(fields, b) ? { field: b, expected: `${a} or ${b}, not both`, sentence } : undefined
