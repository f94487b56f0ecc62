// What is written
export { checkPosting, postingSchema } from './check-posting.ts'
export type { Draft, Posting } from './posting.ts'
export { currentVersion, upgrade } from './upgrade.ts'
export type { Opened } from './upgrade.ts'

// Writing it
export { clocksAhead, clockTime, firstClock, receive, tick } from './clock.ts'
export type { Ahead, Clock } from './clock.ts'
export { newDevice, newEntryId, seen, writePostings } from './write.ts'
export type { DeviceState, Writing, Written } from './write.ts'

// Its chain
export { canonicalJson } from './canonical.ts'
export { headsOf, verifyChain } from './chain.ts'
export type { ChainFault, Head, Heads } from './chain.ts'
export { postingHash, sha256Hex } from './hash.ts'

// What it adds up to
export { conflicts } from './conflicts.ts'
export type { Conflict } from './conflicts.ts'
export type { Book, Entry, Saying, Strike } from './entry.ts'
export { fold, foldMore } from './fold.ts'
export { byChain, byClock } from './order.ts'
