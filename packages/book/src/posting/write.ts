import type { Book } from './entry.ts'
import type { Clock } from './clock.ts'
import { firstClock, receive, tick } from './clock.ts'
import { InputError } from '@lodebook/reckon'
import { checkPosting } from './check-posting.ts'
import { postingHash } from './hash.ts'
import type { Draft, Posting } from './posting.ts'
import { sightOf, standing } from './standing.ts'

/** Where a device stands: how far its chain has come, and the latest clock it has seen. */
export interface DeviceState {
  readonly device: string
  /** Of its last posting; 0 before its first. */
  readonly seq: number
  /** Hash of its last posting; '' before its first. */
  readonly last: string
  readonly clock: Clock
}

/** A device that has not written yet. */
export const newDevice = (device: string): DeviceState => ({ device, seq: 0, last: '', clock: firstClock })

/** The state of a device after these postings, its own and others', have come in. In any order. */
export function seen(state: DeviceState, postings: readonly Posting[]): DeviceState {
  return postings.reduce((now, posting) => ({
    ...now, clock: receive(now.clock, posting.clock),
    ...(posting.device === now.device && posting.seq > now.seq ? { seq: posting.seq, last: posting.hash } : {}),
  }), state)
}

/** What a device writes with. */
export interface Writing {
  /** The person who writes. */
  readonly by: string
  readonly nowMs: number
  /** What the writer has before them. Without it a change of another device's value counts as made without knowing of it. */
  readonly book?: Book
}

export interface Written { readonly postings: readonly Posting[], readonly state: DeviceState }

/** An id for the n-th new entry (0, 1, 2…) that this device begins next. No two devices and no two entries share one. */
export const newEntryId = ({ device, seq }: DeviceState, n = 0): string => `${device}.${seq + 1 + n}`

/**
 * [P2] [P3] Makes the next postings of a device's chain, one for each draft, and the state after them.
 * Whether the drafts make sense is checkDraft's to say beforehand; here only what every door asks of a posting is asked.
 * @throws InputError when a draft makes no valid posting
 */
export function writePostings(state: DeviceState, drafts: readonly Draft[], { by, nowMs, book }: Writing): Written {
  const postings: Posting[] = []
  let { seq, last, clock } = state
  for (const draft of drafts) {
    seq += 1
    clock = tick(clock, nowMs)
    const unhashed: Omit<Posting, 'hash'> = { v: 1, device: state.device, seq, prev: last, clock, by, ...fieldsOf(draft), ...sights(draft, book) }
    const posting: Posting = { ...unhashed, hash: postingHash(unhashed) }
    const problem = checkPosting(posting)
    if (problem) throw new InputError(problem.field, problem.value, problem.expected, problem.message)
    postings.push(posting)
    last = posting.hash
  }
  return { postings, state: { device: state.device, seq, last, clock } }
}

const fieldsOf = ({ entry, kind, set, struck, why, origin }: Draft): Draft => ({
  entry, kind, set, ...(struck === undefined ? {} : { struck }), ...(why === undefined ? {} : { why }), ...(origin === undefined ? {} : { origin }),
})

function sights(draft: Draft, book: Book | undefined): Pick<Posting, 'saw'> {
  const history = book?.all.get(draft.entry)?.history
  if (history === undefined) return {}
  const saw = Object.entries(history).filter(([name]) => Object.hasOwn(draft.set, name))
    .map(([name, sayings]) => [name, standing(sayings).map(sightOf)] as const)
  return saw.length === 0 ? {} : { saw: Object.fromEntries(saw) }
}
