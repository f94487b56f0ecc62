import { checkDraft, fold, foldMore, isError, newDevice, newEntryId, seen, sha256Hex, StoreError, writePostings } from '@lodebook/book'
import type { Book, Cursors, Draft, Posting, Problem, Store } from '@lodebook/book'
import type { DeviceState } from '@lodebook/book'
import type { Finding, Writable, Written } from './desk.ts'

export interface BookkeeperParts {
  readonly store: Store
  readonly device: string
  readonly now: () => number
  /** The latest that it can be by any clock known; what is said to be later lies in the future. */
  readonly latest: () => number
  /** Runs one at a time across all windows of the browser, so that a device's chain is written by one hand. */
  readonly alone: <T>(job: () => Promise<T>) => Promise<T>
}

/**
 * Keeps one book on the device: what is in the store, folded; and the one pen that adds to it.
 * A write is checked against the book as it stands, given its place in the device's chain, made durable, and only then counted as saved.
 */
export class Bookkeeper {
  readonly #parts: BookkeeperParts
  #book: Book = fold([])
  #state: DeviceState
  #cursors: Cursors = {}

  constructor(parts: BookkeeperParts) {
    this.#parts = parts
    this.#state = newDevice(parts.device)
  }

  get book(): Book { return this.#book }
  get store(): Store { return this.#parts.store }

  /** Takes in what has come into the store since the last time, from other windows or the hub. Whether there was anything. */
  async catchUp(): Promise<boolean> {
    const fresh = await this.#parts.store.since(this.#cursors)
    if (fresh.length === 0) return false
    this.#take(fresh)
    this.#cursors = await this.#parts.store.cursors()
    return true
  }

  #take(postings: readonly Posting[]): void {
    this.#book = foldMore(this.#book, postings)
    this.#state = seen(this.#state, postings)
  }

  /** Problems and doubts of a draft, as the book stands. */
  check({ kind, set, entry }: Writable): readonly Finding[] {
    return checkDraft(kind, set, { book: this.#book, now: this.#parts.latest(), ...(entry === undefined ? {} : { entry }) }).map(findingOf)
  }

  /** Writes one draft. Nothing is in the book, here or in the store, unless it resolves as saved. */
  write(by: string, draft: Writable): Promise<Written> {
    return this.#withPen(async () => {
      const problems = Object.keys(draft.set).length > 0 || draft.struck === undefined ? this.check(draft) : []
      if (problems.some(p => !p.warning)) return { saved: false, problems }
      const entry = draft.entry ?? newEntryId(this.#state), nowMs = this.#parts.now()
      await this.#append(by, [{ ...draft, entry }], nowMs)
      return { saved: true, entry, at: new Date(nowMs).toISOString() }
    })
  }

  /** Writes many drafts that have been checked together, as one: all of them are durable, or none is in the book. How many were written. */
  writeAll(by: string, drafts: readonly Draft[]): Promise<number> {
    return this.#withPen(async () => {
      await this.#append(by, drafts, this.#parts.now())
      return drafts.length
    })
  }

  async #append(by: string, drafts: readonly Draft[], nowMs: number): Promise<void> {
    const { postings } = writePostings(this.#state, drafts, { by, nowMs, book: this.#book })
    await this.#parts.store.append(postings)
    this.#take(postings)
    this.#cursors = { ...this.#cursors, [this.#parts.device]: this.#state.seq }
  }

  /** Does a job with all that other windows have written taken in; again when one of them wrote in the very meantime. */
  #withPen<T>(job: () => Promise<T>): Promise<T> {
    return this.#parts.alone(async () => {
      for (let again = 0; ; again++) {
        await this.catchUp()
        try { return await job() } catch (problem) {
          if (!(problem instanceof StoreError && problem.reason === 'forked' && again < 5)) throw problem
        }
      }
    })
  }

  async putBlob(bytes: Uint8Array): Promise<string> {
    const name = sha256Hex(bytes)
    await this.#parts.store.putBlob(name, bytes)
    return name
  }
}

const findingOf = (problem: Problem): Finding => ({ field: problem.field, message: problem.message, warning: !isError(problem) })
