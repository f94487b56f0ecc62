import type { Entry } from '../posting/entry.ts'
import type { Fields } from '../values.ts'

/** What an entry says, without how it was spelled: two entries with one key are the same thing written down twice. */
export function contentKey(kind: string, fields: Fields): string {
  return JSON.stringify([kind, ...Object.keys(fields).sort().map(name => [name, plainValue(fields[name])])])
}

/** The fields as they were first written, before anybody mended them. */
export const firstWritten = (entry: Entry): Fields =>
  Object.fromEntries(Object.entries(entry.history).flatMap(([name, [first]]) => first === undefined || first.value === null ? [] : [[name, first.value]]))

/** Quantities and money by what they come to, the rest as it stands, parts in alphabetical order. */
function plainValue(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value)) return value.map(plainValue)
  const parts = value as Readonly<Record<string, unknown>>
  return Object.keys(parts).sort().filter(name => name !== 'text' && name !== 'from').map(name => [name, plainValue(parts[name])])
}
