import type { Cursors, Posting, Store } from '@lodebook/book'
import type { Database } from './database.ts'

const durable = { durability: 'strict' } as const
const beyond = '\uffff' // sorts after every hash

/**
 * The book on a phone or laptop. A write is acknowledged only when the browser has reported the transaction complete with strict
 * durability. Other windows of the same browser may write to the same database; nothing is remembered between calls.
 */
export class IndexedDbStore implements Store {
  readonly #database: Database
  constructor(database: Database) { this.#database = database }

  async append(postings: readonly Posting[]): Promise<{ readonly added: number }> {
    if (postings.length === 0) return { added: 0 }
    const transaction = this.#database.transaction('postings', 'readwrite', durable)
    const done = transaction.done
    try {
      let added = 0
      for (const posting of postings) {
        const key: [string, number, string] = [posting.device, posting.seq, posting.hash]
        if (await transaction.store.getKey(key) !== undefined) continue
        await transaction.store.add(posting, key)
        added++
      }
      await done
      return { added }
    } catch (problem) {
      done.catch(() => undefined) // the same failure, reported once
      try { transaction.abort() } catch { /* it has ended already */ }
      throw problem
    }
  }

  async since(cursors: Cursors = {}): Promise<readonly Posting[]> {
    const transaction = this.#database.transaction('postings')
    const devices = [...headsOf(await transaction.store.getAllKeys()).keys()]
    const runs = await Promise.all(devices.map(device =>
      transaction.store.getAll(IDBKeyRange.bound([device, cursors[device] ?? 0, beyond], [device, Infinity]))))
    await transaction.done
    return runs.flat()
  }

  async cursors(): Promise<Cursors> {
    return Object.fromEntries(headsOf(await this.#database.getAllKeys('postings')))
  }

  async putBlob(sha256: string, bytes: Uint8Array): Promise<void> {
    const transaction = this.#database.transaction('blobs', 'readwrite', durable)
    await Promise.all([transaction.store.put(bytes, sha256), transaction.done])
  }

  getBlob(sha256: string): Promise<Uint8Array | undefined> { return this.#database.get('blobs', sha256) }

  close(): Promise<void> { this.#database.close(); return Promise.resolve() }
}

/** For each device, the last place held with none missing before it. Keys come in order of device and place, as the database keeps them. */
function headsOf(keys: readonly (readonly [device: string, seq: number, hash: string])[]): Map<string, number> {
  const heads = new Map<string, number>()
  for (const [device, seq] of keys) {
    const head = heads.get(device) ?? 0
    heads.set(device, seq === head + 1 ? seq : head)
  }
  return heads
}
