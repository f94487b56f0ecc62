import type { Book } from '../posting/entry.ts'
import { checkDraft } from './check-draft.ts'
import type { Problem } from './problem.ts'

/**
 * What is wrong or doubtful in a book as it stands: what was possible when it was written and is not any more since copies were merged (two
 * bags of one number), and what still waits for something (a station nobody measured). Struck entries are left alone.
 * @param now  milliseconds since 1970
 */
export const checkBook = (book: Book, now: number): readonly Problem[] => [...book.all.values()]
  .flatMap(({ id, kind, struck }) => struck ? [] : checkDraft(kind, {}, { book, entry: id, now }))
