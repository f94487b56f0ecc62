import { firstClock, fold, newDevice, tick, writePostings, type Clock, type DeviceState, type Posting } from '@lodebook/book'
import type { Note } from './diary.ts'

/** The crew's notes as postings: each device's own chain, clocks going forward, in the order of time. */
export function posted(notes: readonly Note[]): readonly Posting[] {
  const devices = new Map<string, DeviceState>(), ofEntry = new Map<string, Posting[]>(), out: Posting[] = []
  for (const { at, device, by, draft, informed } of inTime(notes)) {
    const before = ofEntry.get(draft.entry)
    const writing = { by, nowMs: at, ...informed && before !== undefined ? { book: fold(before) } : {} }
    const { postings, state } = writePostings(devices.get(device) ?? newDevice(device), [draft], writing)
    devices.set(device, state)
    ofEntry.set(draft.entry, [...before ?? [], ...postings])
    out.push(...postings)
  }
  return out
}

const inTime = (notes: readonly Note[]): readonly Note[] => [...notes].sort((a, b) => a.at - b.at)

/**
 * The same postings without their SHA-256 and without the book's checks, for tests that fold some hundreds of books: they fold to the same
 * entries. No door takes them.
 */
export function unsealed(notes: readonly Note[]): readonly Posting[] {
  const devices = new Map<string, { seq: number, clock: Clock }>()
  return inTime(notes).map(({ at, device, by, draft }): Posting => {
    const before = devices.get(device) ?? { seq: 0, clock: firstClock }, seq = before.seq + 1, clock = tick(before.clock, at)
    devices.set(device, { seq, clock })
    return { v: 1, device, seq, prev: '', clock, by, ...draft, hash: `${device}.${seq}` }
  })
}
