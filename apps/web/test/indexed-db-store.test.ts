import { IDBFactory } from 'fake-indexeddb'
import 'fake-indexeddb/auto'
import { deleteDB } from 'idb'
import { expect, it } from 'vitest'
import { conformance } from '../../../packages/book/test/conformance.ts'
import { openDatabase } from '../src/bookkeeper/database.ts'
import { IndexedDbStore } from '../src/bookkeeper/indexed-db-store.ts'
import { changeBook, labelBook, openShelf } from '../src/bookkeeper/shelf.ts'

let made = 0
conformance('The browser store', () => {
  const name = `conformance-${made++}`
  return Promise.resolve({ open: async () => new IndexedDbStore(await openDatabase(name)), drop: () => deleteDB(name) })
}, { lasts: true })

it('asks the browser for strict durability on every write', async () => {
  const database = await openDatabase('durability'), asked: unknown[] = []
  const transaction = database.transaction.bind(database)
  database.transaction = ((...args: Parameters<typeof transaction>) => {
    asked.push([args[1], args[2]])
    return transaction(...args)
  }) as typeof database.transaction
  const store = new IndexedDbStore(database)
  await store.append([{ device: 'd1', seq: 1, hash: 'h' } as never])
  await store.putBlob('e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', new Uint8Array())
  expect(asked).toEqual([['readwrite', { durability: 'strict' }], ['readwrite', { durability: 'strict' }]])
})

it('a device keeps its name, lays a book aside and finds it again', async () => {
  globalThis.indexedDB = new IDBFactory()
  const first = await openShelf()
  expect(first).toEqual({ device: expect.stringMatching(/^d[0-9a-f]{12}$/) as string, database: 'lodebook' })
  await labelBook('north', 'lodebook')
  expect(await changeBook('south')).toBe('lodebook-south')
  expect(await openShelf()).toEqual({ device: first.device, database: 'lodebook-south' })
  expect(await changeBook('north')).toBe('lodebook')
})
