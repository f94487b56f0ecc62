import type { Book, Entry } from './entry.ts'
import { foldEntry } from './fold-entry.ts'
import { byClock } from './order.ts'
import type { Posting } from './posting.ts'

type Lists = ReadonlyMap<string, readonly Entry[]>
/** The postings of each entry, in order: what a book keeps so that more can be folded in. */
type Logs = ReadonlyMap<string, readonly Posting[]>

const none: readonly Entry[] = []

class FoldedBook implements Book {
  /** @param last  a posting after which no entry of the book began */
  constructor(readonly all: ReadonlyMap<string, Entry>, readonly postings: number, readonly logs: Logs, readonly lists: Lists, readonly last?: Posting) {}
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
  const kinds = new Set<string>()
  const folded: Entry[] = []
  for (const [id, added] of fresh) {
    const log = [...logs.get(id) ?? [], ...added].sort(byClock)
    const entry = foldEntry(log)
    kinds.add(book.all.get(id)?.kind ?? entry.kind).add(entry.kind)
    logs.set(id, log)
    folded.push(entry)
  }
  const all = withEntries(book, logs, folded)
  const count = [...fresh.values()].reduce((sum, added) => sum + added.length, book.postings)
  return new FoldedBook(all, count, logs, listsOf(all, kinds, book.lists), lastBegun(book, logs, folded))
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

const firstOf = (logs: Logs, id: string): Posting => logs.get(id)![0]!

/** [F6] Entries in the order of their first postings. Mostly the folded ones were there already or come after all others, and nothing needs sorting. */
function withEntries(book: FoldedBook, logs: Logs, folded: readonly Entry[]): ReadonlyMap<string, Entry> {
  const byBeginning = (a: string, b: string) => byClock(firstOf(logs, a), firstOf(logs, b))
  const all = new Map(book.all)
  for (const entry of [...folded].sort((a, b) => byBeginning(a.id, b.id))) all.set(entry.id, entry)
  const inOrder = folded.every(({ id }) => {
    const first = firstOf(logs, id)
    return book.logs.has(id) ? firstOf(book.logs, id) === first : book.last === undefined || byClock(book.last, first) < 0
  })
  return inOrder ? all : new Map([...all].sort(([a], [b]) => byBeginning(a, b)))
}

/** A posting after which no entry began. When an earlier posting of the last entry has come in, this one is later than need be, which costs a sorting. */
const lastBegun = (book: FoldedBook, logs: Logs, folded: readonly Entry[]): Posting => folded.map(({ id }) => firstOf(logs, id))
  .reduce((last, first) => byClock(last, first) < 0 ? first : last, book.last ?? firstOf(logs, folded[0]!.id))

/** The lists of these kinds anew, and the others as they were. */
function listsOf(all: ReadonlyMap<string, Entry>, kinds: ReadonlySet<string>, before: Lists): Lists {
  const anew = new Map([...kinds].map((kind): [string, Entry[]] => [kind, []]))
  for (const entry of all.values()) if (!entry.struck) anew.get(entry.kind)?.push(entry)
  return new Map([...before, ...anew])
}
