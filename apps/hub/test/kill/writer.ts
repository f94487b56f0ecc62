import { writeSync } from 'node:fs'
import { newDevice, newEntryId, seen, writePostings } from '@lodebook/book'
import { SqliteStore } from '../../src/sqlite-store.ts'

/**
 * Goes on writing a book until it is killed, one to three postings a call, and prints the place of the last one after each call that
 * returned. Standard output is written at once, so that what was printed was acknowledged and nothing else was.
 */
const store = new SqliteStore(process.argv[2]!)
let state = seen(newDevice('d1'), await store.since())
for (let call = 0; ; call += 1) {
  const drafts = Array.from({ length: 1 + call % 3 }, (_, i) =>
    ({ entry: newEntryId(state, i), kind: 'sample', set: { bag: `B-${state.seq + 1 + i}`, note: 'as it was written at the face '.repeat(40).trim() } }))
  const written = writePostings(state, drafts, { by: 'Ines', nowMs: Date.UTC(2026, 4, 3) + state.seq })
  await store.append(written.postings)
  state = written.state
  writeSync(1, `${state.seq}\n`)
}
