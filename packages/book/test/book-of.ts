import type { Book, Entry, Fields } from '../src/index.ts'

let made = 0

/** A book of entries that were simply stated, for tests that are not about postings. */
export function bookOf(...stated: readonly (readonly [kind: string, fields: Fields, id?: string])[]): Book {
  const entries = stated.map(([kind, fields, id = `e${++made}`]): Entry => ({
    id, kind, fields, struck: false, createdBy: 'Ines', createdAt: '2026-05-01T08:00:00Z', changedAt: '2026-05-01T08:00:00Z', history: {},
  }))
  const lists = new Map<string, readonly Entry[]>()
  return {
    all: new Map(entries.map(entry => [entry.id, entry])),
    of: kind => lists.get(kind) ?? lists.set(kind, entries.filter(entry => entry.kind === kind)).get(kind)!,
    postings: entries.length,
  }
}
