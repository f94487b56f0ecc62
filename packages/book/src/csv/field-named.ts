import type { Kind } from '../kinds/index.ts'
import { loosely } from './heading-text.ts'
import type { PlacePart } from './recipe.ts'
import { placeParts } from './recipe.ts'

/** What a field's written name points at: the field, the kinds that are meant, and the part of a place. */
export interface NamedField {
  readonly kinds: readonly Kind[]
  readonly field: string
  readonly part?: PlacePart
}

/**
 * Finds the field that is meant by `gold`, `Gold`, `assay.gold` or `place.along`, by its id or its label.
 * Without a kind it is the first that has such a field; all of them where the field is what joins them, such as the bag.
 */
export function fieldNamed(spec: string, kinds: readonly Kind[]): NamedField | undefined {
  const words = spec.split('.').map(word => word.trim())
  const named = words.length > 1 ? kinds.find(kind => loosely(kind.id) === loosely(words[0]!)) : undefined
  const [name = '', last] = named ? words.slice(1) : words
  const withField = (named ? [named] : kinds).flatMap((kind) => {
    const ids = Object.keys(kind.fields)
    const id = ids.find(field => loosely(field) === loosely(name)) ?? ids.find(field => loosely(kind.fields[field]!.label) === loosely(name))
    return id === undefined ? [] : [{ kind, id }]
  })
  const [first] = withField
  if (!first) return undefined
  const part = placeParts.find(known => known === last)
  if (last !== undefined && (part === undefined || first.kind.fields[first.id]!.is.type !== 'place')) return undefined
  const everywhere = named === undefined && withField.length === kinds.length && withField.every(({ id }) => id === first.id)
  return { kinds: everywhere && joins(kinds, first.id) ? kinds : [first.kind], field: first.id, ...(part === undefined ? {} : { part }) }
}

/** Whether the entries that one row makes hang together by a field: each kind has it, as part of how a person names the entry. */
export const joins = (kinds: readonly Kind[], field: string): boolean => kinds.every(kind => kind.title.includes(field))
