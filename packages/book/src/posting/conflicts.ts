import { canonicalJson } from './canonical.ts'
import type { Book, Saying } from './entry.ts'
import { standing } from './standing.ts'

/** Two or more people wrote different values into one field without knowing of each other. The last saying is in force. */
export interface Conflict { readonly entry: string, readonly kind: string, readonly field: string, readonly sayings: readonly Saying[] }

/** [F8] The conflicts of a book that nobody has settled yet, in the order of entries. Whoever writes the field again, having seen them, settles it. */
export const conflicts = (book: Book): readonly Conflict[] => [...book.all.values()].flatMap(({ id, kind, struck, history }) =>
  struck ? [] : Object.entries(history).flatMap(([field, sayings]) => {
    const open = standing(sayings)
    const differ = open.length > 1 && new Set(open.map(({ value }) => canonicalJson(value))).size > 1
    return differ ? [{ entry: id, kind, field, sayings: open }] : []
  }))
