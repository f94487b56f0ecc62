import fc from 'fast-check'
import type { Draft, Posting } from '../../src/index.ts'
import { fold, newDevice, seen, writePostings } from '../../src/index.ts'

export const startMs = Date.UTC(2026, 4, 3, 8)

/** Postings of one device, one for each draft, a minute apart. */
export function postingsOf(device: string, drafts: readonly Draft[], by = `crew of ${device}`): readonly Posting[] {
  let state = newDevice(device)
  return drafts.flatMap((draft, i) => {
    const written = writePostings(state, [draft], { by, nowMs: startMs + i * 60_000 })
    state = written.state
    return written.postings
  })
}

const field = fc.oneof(
  fc.record({ bag: fc.constantFrom('B-1', 'B-2', 'B-3') }), fc.record({ note: fc.option(fc.constantFrom('rusty', 'clean', 'wet')) }),
  fc.record({ vein: fc.constantFrom('Main', 'East') }), fc.record({ bag: fc.constant('B-9'), collector: fc.constantFrom('Ines', 'Tomas') }), fc.constant({}),
)
const action = fc.record({
  device: fc.constantFrom('d1', 'd2', 'd3'), entry: fc.constantFrom('e1', 'e2', 'e3', 'e4', 'e5'), kind: fc.constantFrom('sample', 'sample', 'sample', 'pan'),
  set: field, struck: fc.option(fc.boolean(), { nil: undefined, freq: 5 }), waitMs: fc.integer({ min: -3_600_000, max: 3_600_000 }), sync: fc.boolean(),
})

/**
 * Histories of three devices that write to the same entries, some while out of reach of each other, with clocks an hour wrong either way.
 * Postings come out by device.
 */
export const history: fc.Arbitrary<readonly Posting[]> = fc.array(action, { minLength: 1, maxLength: 24 }).map((actions) => {
  const devices = new Map(['d1', 'd2', 'd3'].map(name => [name, { state: newDevice(name), known: [] as readonly Posting[] }]))
  let shared: readonly Posting[] = []
  actions.forEach(({ device, entry, kind, set, struck, waitMs, sync }, i) => {
    const mine = devices.get(device)!
    const draft: Draft = { entry, kind, set: kind === 'pan' ? {} : set, ...(struck === undefined ? {} : { struck }) }
    const written = writePostings(mine.state, [draft], { by: device, nowMs: startMs + i * 60_000 + waitMs, book: fold(mine.known) })
    const known = [...mine.known, ...written.postings]
    if (sync) shared = [...shared, ...known]
    const all = sync ? [...known, ...shared] : known
    devices.set(device, { state: seen(written.state, all), known: all })
  })
  return [...devices].flatMap(([name, { known }]) =>
    [...new Map(known.filter(({ device }) => device === name).map(posting => [posting.hash, posting])).values()])
})
