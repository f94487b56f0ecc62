import type { Posting } from './posting.ts'

/** [F2] The order in which postings count: by clock, then by device, then by hash. */
export const byClock = (a: Posting, b: Posting): number => compare(a.clock, b.clock) || compare(a.device, b.device) || compare(a.hash, b.hash)

/** The order in which postings are kept and handed on: by device, then by place in its chain. */
export const byChain = (a: Posting, b: Posting): number => compare(a.device, b.device) || a.seq - b.seq || compare(a.hash, b.hash)

/** By UTF-16 code units: the same on every machine, whatever its language. */
const compare = (a: string, b: string): number => a < b ? -1 : a > b ? 1 : 0
