import type { Book } from '../posting/entry.ts'
import type { Fields } from '../values.ts'
import { contentKey, firstWritten } from './content-key.ts'
import type { AlreadyThere, RowDraft } from './csv-preview.ts'

type Found = Pick<AlreadyThere, 'entry' | 'why' | 'struck'>

/**
 * Which drafts the book holds already, by their place in the list.
 *
 * From this very file: an entry of the same id. From another file or by hand: an entry that says, or said when it was first written, exactly
 * the same; each such entry stands for one row, so that a reading that was taken twice is still written twice. Struck entries count: a row
 * that the crew has struck does not come back by itself.
 */
export function alreadyThere(drafts: readonly RowDraft[], book: Book): ReadonlyMap<number, Found> {
  const found = new Map<number, Found>()
  const wanted = new Set(drafts.map(draft => draft.kind))
  const byContent = new Map<string, string[]>()
  for (const entry of book.all.values()) {
    if (!wanted.has(entry.kind)) continue
    const keys = new Set([entry.fields, firstWritten(entry)].map(fields => contentKey(entry.kind, fields)))
    for (const key of keys) byContent.set(key, [...byContent.get(key) ?? [], entry.id])
  }
  const spent = new Set<string>()
  for (const [i, draft] of drafts.entries()) {
    const same = book.all.get(draft.entry)
    if (same) { spent.add(same.id); found.set(i, { entry: same.id, why: 'this file', struck: same.struck }) }
  }
  for (const [i, draft] of drafts.entries()) {
    if (found.has(i)) continue
    const id = byContent.get(contentKey(draft.kind, draft.set as Fields))?.find(candidate => !spent.has(candidate))
    if (id === undefined) continue
    spent.add(id)
    found.set(i, { entry: id, why: 'same content', struck: book.all.get(id)!.struck })
  }
  return found
}
