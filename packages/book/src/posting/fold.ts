import type { Book, Entry } from './entry.ts'
import { foldEntry } from './fold-entry.ts'
import { byClock } from './order.ts'
import type { Posting } from './posting.ts'

type Lists = ReadonlyMap<string, readonly Entry[]>
/** The postings of each entry, in order: what a book keeps so that more can be folded in. */
type Logs = ReadonlyMap<string, readonly Posting[]>

const none: readonly Entry[] = []

class FoldedBook implements Book {
  constructor(readonly all: ReadonlyMap<string, Entry>, readonly postings: number, readonly logs: Logs, readonly lists: Lists) {}
  of(kind: string): readonly Entry[] { return this.lists.get(kind) ?? none }
}

/** [F1] The book that these postings add up to; their order, and repeats among them, make no difference. */
export const fold = (postings: readonly Posting[]): Book => foldMore(new FoldedBook(new Map(), 0, new Map(), new Map()), postings)

/**
 * [F9] The book with more postings folded in: equal to a fold of all of them. Entries that are not touched are the same objects as before, and
 * the list of a kind of which no entry is touched is the same list.
 * @param book  made by fold or foldMore; not modified
 * @throws TypeError for any other book
 */
export function foldMore(book: Book, postings: readonly Posting[]): Book {
  if (!(book instanceof FoldedBook)) throw new TypeError('foldMore: this book was not made by fold')
  const fresh = gather(book.logs, postings)
  if (fresh.size === 0) return book
  const logs = new Map(book.logs)
  const all = new Map(book.all)
  const kinds = new Set<string>()
  for (const [id, added] of fresh) {
    const log = [...logs.get(id) ?? [], ...added].sort(byClock)
    const entry = foldEntry(log)
    kinds.add(all.get(id)?.kind ?? entry.kind).add(entry.kind)
    logs.set(id, log)
    all.set(id, entry)
  }
  const ordered = inOrderOfBeginning(all, logs)
  const count = [...fresh.values()].reduce((sum, added) => sum + added.length, book.postings)
  return new FoldedBook(ordered, count, logs, listsOf(ordered, kinds, book.lists))
}

/** The postings that are not in the logs yet, each once, by entry. */
function gather(logs: Logs, postings: readonly Posting[]): ReadonlyMap<string, readonly Posting[]> {
  const fresh = new Map<string, Map<string, Posting>>()
  for (const posting of postings) {
    if (logs.get(posting.entry)?.some(({ hash }) => hash === posting.hash)) continue
    const byHash = fresh.get(posting.entry)
    if (byHash) byHash.set(posting.hash, posting)
    else fresh.set(posting.entry, new Map([[posting.hash, posting]]))
  }
  return new Map([...fresh].map(([id, byHash]) => [id, [...byHash.values()]]))
}

/** [F6] Entries in the order of their first postings. Mostly they are already. */
function inOrderOfBeginning(all: ReadonlyMap<string, Entry>, logs: Logs): ReadonlyMap<string, Entry> {
  const first = (id: string) => logs.get(id)![0]!
  let before: Posting | undefined
  for (const id of all.keys()) {
    const here = first(id)
    if (before !== undefined && byClock(before, here) > 0) return new Map([...all].sort(([a], [b]) => byClock(first(a), first(b))))
    before = here
  }
  return all
}

/** The lists of these kinds anew, and the others as they were. */
function listsOf(all: ReadonlyMap<string, Entry>, kinds: ReadonlySet<string>, before: Lists): Lists {
  const anew = new Map([...kinds].map((kind): [string, Entry[]] => [kind, []]))
  for (const entry of all.values()) if (!entry.struck) anew.get(entry.kind)?.push(entry)
  return new Map([...before, ...anew])
}
