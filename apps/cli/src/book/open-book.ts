import { realpathSync, statSync } from 'node:fs'
import { resolve } from 'node:path'
import type { Book, DeviceState, Draft, Posting, Store } from '@lodebook/book'
import { fold, newDevice, seen, StoreError, writePostings } from '@lodebook/book'
import { exit } from '../exit.ts'
import type { Io } from '../io/io.ts'
import { refuse } from '../refusal.ts'
import { newDeviceName, remember, remembered } from './device.ts'
import { openStore } from './open-store.ts'

/** A book file that is open, as it stood when it was read. */
export interface OpenBook {
  readonly path: string
  readonly store: Store
  readonly postings: readonly Posting[]
  readonly book: Book
  readonly device: DeviceState
}

/** Does something with a book and closes it, whatever happens. */
export async function withBook<T>(path: string, io: Io, act: (open: OpenBook) => Promise<T> | T): Promise<T> {
  const file = resolve(io.cwd, path)
  const stat = statSync(file, { throwIfNoEntry: false })
  if (!stat) throw refuse('book', path, 'a book that is there; `lodebook new` begins one', exit.unreachable)
  if (!stat.isFile() || stat.size === 0) throw refuse('book', path, 'a book; this is ' + (stat.isFile() ? 'an empty file' : 'a folder'))
  const store = openStore(file)
  try {
    return await act(await readBook(realpathSync(file), store, io))
  } finally { await store.close() }
}

async function readBook(path: string, store: Store, io: Io): Promise<OpenBook> {
  const postings = await store.since()
  return { path, store, postings, book: fold(postings), device: deviceFor(path, postings, io) }
}

/** Who this machine writes as: the device that it was before, unless the file is an older copy than what that device has written. */
function deviceFor(path: string, postings: readonly Posting[], io: Io): DeviceState {
  const before = remembered(io, path)
  const head = before?.head
  const known = before && (!head || postings.some(({ device, seq, hash }) => device === before.device && seq === head.seq && hash === head.hash))
  return seen(newDevice(known ? before.device : newDeviceName(io)), postings)
}

/** The person who writes: as said, or as the machine knows them. */
export function writer(by: string | undefined, io: Io): string {
  const name = (by ?? io.env['LODEBOOK_BY'] ?? io.user).trim()
  if (name === '') throw refuse('by', undefined, 'the name of the person who writes: --by NAME')
  return name
}

const tries = 5

/**
 * Writes to an open book: all of the drafts or none of them. When another program of this user wrote in between, the book is read again and
 * the drafts are made anew.
 * @param make  the drafts, from the book as it stands and the device that writes
 * @returns the postings that were written
 */
export async function write(open: OpenBook, by: string, io: Io, make: (open: OpenBook) => readonly Draft[]): Promise<readonly Posting[]> {
  let now = open
  for (let left = tries; ; left--) {
    const { postings, state } = writePostings(now.device, make(now), { by, nowMs: io.now(), book: now.book })
    try {
      await now.store.append(postings)
      remember(io, now.path, { device: state.device, ...(state.seq > 0 ? { head: { seq: state.seq, hash: state.last } } : {}) })
      return postings
    } catch (failure) {
      if (!(failure instanceof StoreError && failure.reason === 'forked') || left === 1) throw failure
      now = await readBook(now.path, now.store, io)
    }
  }
}
