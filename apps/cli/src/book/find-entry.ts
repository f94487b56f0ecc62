import { entryTitle } from '@lodebook/answers'
import type { Book, Entry } from '@lodebook/book'
import { kinds, sameName } from '@lodebook/book'
import { refuse } from '../refusal.ts'

const shortestPrefix = 6

/**
 * The entry that a person means: by its id or the beginning of it, by its name (`B-017`, `A6 to A7`), or by kind and name (`assay:B-017`).
 * Struck entries are found too. Refuses, with the candidates, what means none or several.
 */
export function findEntry(book: Book, said: string): Entry {
  const exact = book.all.get(said)
  if (exact) return exact
  const all = [...book.all.values()]
  const named = all.filter(entry => answersTo(entry, said))
  const found = named.length > 0 ? named : said.length < shortestPrefix ? [] : all.filter(entry => entry.id.startsWith(said))
  const [only] = found
  if (only && found.length === 1) return only
  const list = found.slice(0, 8).map(entry => `${entry.id} (${entryTitle(entry)})`).join(', ')
  throw refuse('entry', said, found.length === 0 ? 'an entry of the book: its id, its name such as B-017, or kind and name such as assay:B-017'
    : `one of ${found.length} entries: ${list}${found.length > 8 ? ' …' : ''}`)
}

function answersTo(entry: Entry, said: string): boolean {
  const [, kind, rest] = /^([a-z-]+):(.+)$/.exec(said) ?? []
  const ofKind = kind !== undefined && kinds[kind] !== undefined
  if (ofKind && entry.kind !== kind) return false
  const name = sameName(ofKind ? rest! : said)
  const label = kinds[entry.kind]?.label ?? entry.kind
  const title = sameName(entryTitle(entry))
  const first = entry.fields[kinds[entry.kind]?.title[0] ?? '']
  return title === name || title === sameName(`${label} ${name}`) || (typeof first === 'string' && sameName(first) === name)
}
