import type { CsvOptions, CsvPreview, RowDraft } from '../../src/csv/index.ts'
import { previewCsv } from '../../src/csv/index.ts'
import type { Book, Entry } from '../../src/posting/entry.ts'
import type { Fields } from '../../src/values.ts'

/** Noon on a day after every date in these tests that is meant to be past. */
export const now = Date.UTC(2026, 10, 25, 12)

export const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text)

/** A book that holds these drafts, each written once. */
export function bookOf(drafts: readonly RowDraft[], struck: readonly string[] = []): Book {
  const all = new Map(drafts.map(({ entry, kind, set }): [string, Entry] => [entry, {
    id: entry, kind, fields: set as Fields, struck: struck.includes(entry), createdBy: 'R', createdAt: '2026-11-20T00:00:00.000Z', changedAt: '2026-11-20T00:00:00.000Z',
    history: Object.fromEntries(Object.entries(set).map(([field, value]) => [field, [{ value, clock: '1', device: 'd', by: 'R', posting: 'p' }]])),
  }]))
  const lists = new Map<string, readonly Entry[]>()
  for (const entry of all.values()) if (!entry.struck) lists.set(entry.kind, [...lists.get(entry.kind) ?? [], entry])
  const none: readonly Entry[] = []
  return { all, of: kind => lists.get(kind) ?? none, postings: drafts.length }
}

export const emptyBook = bookOf([])

export const preview = (text: string, kinds: readonly string[], options: Omit<CsvOptions, 'kinds'> = {}, book: Book = emptyBook): CsvPreview =>
  previewCsv(utf8(text), { kinds, ...options }, { book, now })

/** Messages of errors and warnings, in order. */
export const messages = (made: CsvPreview): readonly string[] => made.problems.map(problem => problem.message)

/** A quantity's value in its base unit. */
export const value = (draft: RowDraft | undefined, field: string): unknown => {
  const stored = draft?.set[field]
  return typeof stored === 'object' && stored !== null && 'value' in stored ? stored.value : undefined
}
