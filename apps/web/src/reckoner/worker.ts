import { createReckoner } from '@lodebook/answers'
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

const reckoner: Reckoner = {
  async answer(part, postings, database) {
    if (book.postings < postings || opened !== database) await catchUp(database)
    return answers.answer(part)
  },
}
expose(reckoner)
