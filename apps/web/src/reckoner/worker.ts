import { createReckoner } from '@lodebook/answers'
import type { Grade, PartName, Reckoned } from '@lodebook/answers'
import { fold, foldMore } from '@lodebook/book'
import type { Book, Cursors } from '@lodebook/book'
import { expose } from 'comlink'
import { openDatabase } from '../bookkeeper/database.ts'
import { IndexedDbStore } from '../bookkeeper/indexed-db-store.ts'
import type { Reckoner } from './reckoner.ts'

const answers = createReckoner()
let store: IndexedDbStore | undefined, opened = '', book: Book = fold([]), cursors: Cursors = {}

/** Reads what has been added to the book; the pen is the other worker's. */
async function catchUp(database: string): Promise<void> {
  if (!store || opened !== database) {
    await store?.close()
    store = new IndexedDbStore(await openDatabase(database))
    opened = database
    book = fold([])
    cursors = {}
  }
  const fresh = await store.since(cursors)
  if (fresh.length === 0 && book.postings > 0) return
  cursors = await store.cursors()
  book = foldMore(book, fresh)
  answers.setBook(book)
}

/** What a screen is handed: the outcomes of every panel stay here, where pay is reckoned from them; copying them out would take longer than the reckoning. */
function forScreen<P extends PartName>(part: P, value: Reckoned[P]): Reckoned[P] {
  if (part !== 'grade' || 'notEnough' in value) return value
  const grade = value as Grade
  const light: unknown = { ...grade, outcomes: { ...grade.outcomes, panels: [], drawn: [] } }
  // eslint-disable-next-line @typescript-eslint/no-unnecessary-type-assertion -- without it the compiler would follow every part at once, which it can't
  return light as Reckoned[P]
}

const reckoner: Reckoner = {
  async answer(part, postings, database) {
    if (book.postings < postings || opened !== database) await catchUp(database)
    return forScreen(part, answers.answer(part))
  },
}
expose(reckoner)
