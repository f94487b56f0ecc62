export { MemoryStore } from './memory-store.ts'
export { closedStore, forkedPlace, misnamedBlob, StoreError } from './store-error.ts'
export type { StoreFailure } from './store-error.ts'
export type { Cursors, Store } from './store.ts'
