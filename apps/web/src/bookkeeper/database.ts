import type { Posting } from '@lodebook/book'
import { openDB } from 'idb'
import type { DBSchema, IDBPDatabase } from 'idb'

/** What the device keeps of one book: the postings, the files beside them, and how far the hub has come. */
export interface Kept extends DBSchema {
  postings: { key: [device: string, seq: number], value: Posting }
  blobs: { key: string, value: Uint8Array }
  facts: { key: string, value: string }
}

export type Database = IDBPDatabase<Kept>

/** Opens one book's database, making it at the first visit. A newer version of the app in another window is let through. */
export const openDatabase = (name: string): Promise<Database> => openDB<Kept>(name, 1, {
  upgrade(database) {
    database.createObjectStore('postings')
    database.createObjectStore('blobs')
    database.createObjectStore('facts')
  },
  blocking(_current, _blocked, event) { (event.target as IDBDatabase).close() },
})
