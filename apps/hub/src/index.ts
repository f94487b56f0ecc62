export { SqliteStore } from './sqlite-store.ts'
export type { SqliteOptions } from './sqlite-store.ts'
