import type { Book, Entry } from '../posting/entry.ts'
import { checkDraft, kindOf } from '../schema/check-draft.ts'
import { bagKinds } from '../schema/known.ts'
import type { Problem } from '../schema/problem.ts'
import { isError, refuse } from '../schema/problem.ts'
import { sameName } from '../schema/same-name.ts'
import type { Fields } from '../values.ts'
import type { RowDraft } from './csv-preview.ts'
import { inRow } from './in-row.ts'
import type { CsvTarget } from './recipe.ts'

interface Read { readonly draft: RowDraft, readonly problems: readonly Problem[] }

/**
 * What the rows of a file say to each other and to the book: a bag number used twice, a station or a bag that nothing explains.
 * A row is held against the book as it would be with the whole file in it, so that a bag and its assay may come in one file.
 */
export function checkTogether(read: readonly Read[], target: CsvTarget): readonly Problem[] {
  const twice = usedTwice(read.map(({ draft }) => draft))
  const sound = read.filter(({ draft, problems }) => !problems.some(isError) && !twice.some(problem => problem.row === draft.row))
  const book = withDrafts(target.book, sound.map(({ draft }) => draft))
  const found = sound.flatMap(({ draft, problems }) => {
    const known = new Set(problems.map(problem => problem.message))
    return checkDraft(draft.kind, draft.set, { book, entry: draft.entry, now: target.now })
      .map(problem => inRow(problem, draft.row)).filter(problem => !known.has(problem.message))
  })
  return [...twice, ...found]
}

function usedTwice(drafts: readonly RowDraft[]): readonly Problem[] {
  const rows = new Map<string, number>()
  return drafts.flatMap(({ kind: id, set, row }) => Object.entries(kindOf(id)?.fields ?? {}).flatMap(([name, { label, is }]) => {
    const value = set[name]
    if (is.type !== 'text' || is.unique !== true || typeof value !== 'string') return []
    const key = `${(bagKinds as readonly string[]).includes(id) ? 'bag' : `${id} ${name}`} ${sameName(value)}`
    const before = rows.get(key)
    if (before === undefined) { rows.set(key, row); return [] }
    return [inRow({ kind: id, ...refuse(name, label, value, 'a name used once', `because row ${before} has it already`) }, row)]
  }))
}

/** The book as it would be with the drafts written. Lists of kinds that nothing is added to are the book's own. */
function withDrafts(book: Book, drafts: readonly RowDraft[]): Book {
  const entries = drafts.map((draft): Entry => ({
    id: draft.entry, kind: draft.kind, fields: draft.set as Fields, struck: false, createdBy: '', createdAt: '', changedAt: '', history: {},
  }))
  const all = new Map([...book.all, ...entries.map(entry => [entry.id, entry] as const)])
  const lists = new Map([...new Set(drafts.map(draft => draft.kind))].map(kind => [kind, [...book.of(kind), ...entries.filter(entry => entry.kind === kind)]]))
  return { all, of: kind => lists.get(kind) ?? book.of(kind), postings: book.postings }
}
