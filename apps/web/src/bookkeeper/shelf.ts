import { openDB } from 'idb'
import type { DBSchema } from 'idb'

interface Shelf extends DBSchema { facts: { key: string, value: string } }

const first = 'lodebook'
/** A name that no other device draws: 48 random bits. */
const newName = (): string => `d${[...crypto.getRandomValues(new Uint8Array(6))].map(b => b.toString(16).padStart(2, '0')).join('')}`
const shelf = () => openDB<Shelf>('lodebook-shelf', 1, { upgrade(database) { database.createObjectStore('facts') } })

/** What this device calls itself in the chain of its postings, drawn once; and which of the books on it is open. */
export async function openShelf(): Promise<{ readonly device: string, readonly database: string }> {
  const opened = await shelf()
  const transaction = opened.transaction('facts', 'readwrite', { durability: 'strict' })
  const device = await transaction.store.get('device') ?? newName()
  await transaction.store.put(device, 'device')
  const database = await transaction.store.get('open') ?? first
  await transaction.done
  opened.close()
  return { device, database }
}

/** Notes which database holds the book that goes by this id at the hub. */
export async function labelBook(id: string, database: string): Promise<void> {
  const opened = await shelf()
  await opened.put('facts', database, `book:${id}`)
  opened.close()
}

/** Lays the open book aside, untouched, and opens the one that goes by this id: the one kept before, or a fresh one. */
export async function changeBook(id: string): Promise<string> {
  const opened = await shelf()
  const database = await opened.get('facts', `book:${id}`) ?? `lodebook-${id}`
  await opened.put('facts', database, `book:${id}`)
  await opened.put('facts', database, 'open')
  opened.close()
  return database
}
