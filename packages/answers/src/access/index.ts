export { accessOf } from './access.ts'
export type { AccessInput } from './access.ts'
export type * from './shapes.ts'
