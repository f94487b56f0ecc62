import { kinds } from '../kinds/index.ts'
import { kindOf, type Checking, checkDraft } from '../schema/check-draft.ts'
import type { Problem } from '../schema/problem.ts'
import { refuse } from '../schema/problem.ts'
import type { FieldValue } from '../values.ts'
import type { InputOptions } from './read-field.ts'
import { readField } from './read-field.ts'

/** `set` holds the fields that could be read; it may be written when no problem is an error. */
export interface Input { readonly set: Readonly<Record<string, FieldValue>>, readonly problems: readonly Problem[] }

/**
 * From plain written text, field by field, to the values that are kept; then everything that checkDraft checks.
 * Fields left empty are left out.
 * @param texts  by field name: `{ from: 'A6', to: 'A7', distance: '14 ft 3 in', azimuth: 'N 23 E' }`
 */
export function input(kindId: string, texts: Readonly<Record<string, string>>, options: InputOptions & Checking): Input {
  const kind = kindOf(kindId)
  if (kind === undefined) return { set: {}, problems: [refuse('kind', 'Kind', kindId, `one of ${Object.keys(kinds).join(', ')}`)] }
  const set: Record<string, FieldValue> = {}
  const unread: Problem[] = []
  for (const [name, written] of Object.entries(texts)) {
    const text = written.trim()
    if (text === '') continue
    const field = Object.hasOwn(kind.fields, name) ? kind.fields[name] : undefined
    if (field === undefined) {
      unread.push({ kind: kindId, ...refuse(name, kind.label, name, `a field of ${kind.label.toLowerCase()}: ${Object.keys(kind.fields).join(', ')}`) })
      continue
    }
    const read = readField(field, text, options, name)
    if (read.ok) set[name] = read.value
    else unread.push({ kind: kindId, ...refuse(name, field.label, text, read.expected, read.why) })
  }
  // A field that could not be read is not missing as well.
  const checked = checkDraft(kindId, set, options).filter(problem => !(problem.value === undefined && unread.some(({ field }) => field === problem.field)))
  return { set, problems: [...unread, ...checked] }
}
