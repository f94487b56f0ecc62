import { SqliteStore } from '@lodebook/hub/sqlite-store'
import type { Store } from '@lodebook/book'
import { StoreError } from '@lodebook/book'

/** Opens the store in a book file that is there, to read only where it may not be written to. */
export function openStore(file: string): Store {
  try {
    return new SqliteStore(file, { mustExist: true })
  } catch (failure) {
    if (!(failure instanceof StoreError && (failure.reason === 'read-only' || failure.reason === 'failed'))) throw failure
    return new SqliteStore(file, { readOnly: true })
  }
}

/** Begins a store in a new file. */
export const beginStore = (file: string): Store => new SqliteStore(file)
