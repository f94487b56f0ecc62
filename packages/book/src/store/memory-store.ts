import { sha256Hex } from '../posting/hash.ts'
import { byChain } from '../posting/order.ts'
import type { Posting } from '../posting/posting.ts'
import { closedStore, forkedPlace, misnamedBlob } from './store-error.ts'
import type { Cursors, Store } from './store.ts'

/** A store that lasts as long as the program does: for tests, for looking at a file without keeping it. */
export class MemoryStore implements Store {
  readonly #chains = new Map<string, Map<number, Posting>>()
  readonly #blobs = new Map<string, Uint8Array>()
  #closed = false

  append(postings: readonly Posting[]): Promise<{ readonly added: number }> {
    return this.#open(() => {
      const fresh = new Map<string, Posting>()
      for (const posting of postings) {
        const place = `${posting.device} ${posting.seq}`
        const there = this.#chains.get(posting.device)?.get(posting.seq) ?? fresh.get(place)
        if (there === undefined) fresh.set(place, posting)
        else if (there.hash !== posting.hash) throw forkedPlace(posting.device, posting.seq)
      }
      for (const posting of fresh.values()) {
        const chain = this.#chains.get(posting.device) ?? new Map<number, Posting>()
        this.#chains.set(posting.device, chain.set(posting.seq, posting))
      }
      return { added: fresh.size }
    })
  }

  since(cursors: Cursors = {}): Promise<readonly Posting[]> {
    return this.#open(() => [...this.#chains].flatMap(([device, chain]) => [...chain.values()].filter(({ seq }) => seq > (cursors[device] ?? 0))).sort(byChain))
  }

  cursors(): Promise<Cursors> {
    return this.#open(() => Object.fromEntries([...this.#chains].flatMap(([device, chain]) => {
      let seq = 0
      while (chain.has(seq + 1)) seq += 1
      return seq === 0 ? [] : [[device, seq]]
    })))
  }

  putBlob(sha256: string, bytes: Uint8Array): Promise<void> {
    return this.#open(() => {
      const actual = sha256Hex(bytes)
      if (actual !== sha256) throw misnamedBlob(sha256, actual)
      this.#blobs.set(sha256, bytes.slice())
    })
  }

  getBlob(sha256: string): Promise<Uint8Array | undefined> { return this.#open(() => this.#blobs.get(sha256)?.slice()) }

  close(): Promise<void> {
    this.#closed = true
    return Promise.resolve()
  }

  #open<T>(act: () => T): Promise<T> {
    return new Promise((resolve) => {
      if (this.#closed) throw closedStore()
      resolve(act())
    })
  }
}
