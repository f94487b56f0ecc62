import type { ChainFault } from '../posting/chain.ts'
import { verifyChain } from '../posting/chain.ts'
import type { Problem } from '../schema/problem.ts'
import type { Store } from '../store/store.ts'
import type { Chunks } from './read-book-file.ts'
import { readBookFile } from './read-book-file.ts'

export type Imported = TakenIn | { readonly ok: false, readonly problem: Problem }

export interface TakenIn {
  readonly ok: true
  readonly postings: number
  readonly added: number
  readonly blobs: number
  /** What the chains of the devices say about the file: whole, when there is nothing. Places that are missing were missing when it was written. */
  readonly faults: readonly ChainFault[]
}

/**
 * [L2] Takes a whole book's file into a store, or nothing of it. The file is read to its end and checked before anything is written; what the
 * store holds already is passed over, so the same file twice adds nothing.
 * @param open  opens the file from its beginning; called a second time when there are photos in it
 * @throws StoreError when the store cannot take it
 */
export async function importLines(open: () => Chunks, store: Store): Promise<Imported> {
  const read = await readBookFile(open(), () => undefined)
  if (!read.ok) return read
  if (read.blobs > 0) {
    const again = await readBookFile(open(), (name, bytes) => store.putBlob(name, bytes))
    if (!again.ok) return again
  }
  const { added } = await store.append(read.postings)
  return { ok: true, postings: read.postings.length, added, blobs: read.blobs, faults: verifyChain(read.postings) }
}
