import { byChain, closedStore, forkedPlace, misnamedBlob, sha256Hex, StoreError } from '@lodebook/book'
import type { Cursors, Posting, Store } from '@lodebook/book'
import type { Database } from './database.ts'

const durable = { durability: 'strict' } as const

/**
 * The book on a phone or laptop. A write is acknowledged only when the browser has reported the transaction complete with strict
 * durability. Other windows of the same browser may write to the same database; nothing is remembered between calls.
 */
export class IndexedDbStore implements Store {
  readonly #database: Database
  #closed = false
  constructor(database: Database) { this.#database = database }

  append(postings: readonly Posting[]): Promise<{ readonly added: number }> {
    return this.#open(async () => {
      if (postings.length === 0) return { added: 0 }
      const transaction = this.#database.transaction('postings', 'readwrite', durable)
      const done = transaction.done
      done.catch(() => undefined) // the same failure as below, reported once
      try {
        let added = 0
        for (const posting of postings) {
          const key: [string, number] = [posting.device, posting.seq], there = await transaction.store.get(key)
          if (there && there.hash !== posting.hash) throw forkedPlace(posting.device, posting.seq)
          if (there) continue
          await transaction.store.add(posting, key)
          added++
        }
        await done
        return { added }
      } catch (problem) {
        try { transaction.abort() } catch { /* it has ended already */ }
        throw problem
      }
    })
  }

  since(cursors: Cursors = {}): Promise<readonly Posting[]> {
    return this.#open(async () => {
      const transaction = this.#database.transaction('postings')
      const devices = new Set((await transaction.store.getAllKeys()).map(([device]) => device))
      const runs = await Promise.all([...devices].map(device =>
        transaction.store.getAll(IDBKeyRange.bound([device, cursors[device] ?? 0], [device, Infinity], true))))
      return runs.flat().sort(byChain)
    })
  }

  cursors(): Promise<Cursors> {
    return this.#open(async () => {
      const heads: Record<string, number> = {}
      // Keys come in order of device and place.
      for (const [device, seq] of await this.#database.getAllKeys('postings')) if (seq === (heads[device] ?? 0) + 1) heads[device] = seq
      return heads
    })
  }

  putBlob(sha256: string, bytes: Uint8Array): Promise<void> {
    return this.#open(async () => {
      const actual = sha256Hex(bytes)
      if (actual !== sha256) throw misnamedBlob(sha256, actual)
      const transaction = this.#database.transaction('blobs', 'readwrite', durable)
      await Promise.all([transaction.store.put(bytes, sha256), transaction.done])
    })
  }

  getBlob(sha256: string): Promise<Uint8Array | undefined> { return this.#open(() => this.#database.get('blobs', sha256)) }

  close(): Promise<void> {
    if (!this.#closed) this.#database.close()
    this.#closed = true
    return Promise.resolve()
  }

  async #open<T>(act: () => Promise<T>): Promise<T> {
    if (this.#closed) throw closedStore()
    try { return await act() } catch (problem) { throw inWords(problem) }
  }
}

/** What the browser reports, as a sentence for a person where there is one. */
function inWords(problem: unknown): unknown {
  if (!(problem instanceof DOMException)) return problem
  if (problem.name === 'QuotaExceededError') return new StoreError('full', 'This device is full: nothing was added. Make room and save again.', { cause: problem })
  if (problem.name === 'InvalidStateError') return new StoreError('closed', 'The book was closed, perhaps by a newer Lodebook in another window; open it again.', { cause: problem })
  return problem
}
