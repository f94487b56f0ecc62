import { postingHash } from './hash.ts'
import type { Posting } from './posting.ts'

/** The last posting of a device that somebody has seen and noted: a later copy of the book must still hold it. */
export interface Head { readonly seq: number, readonly hash: string }
export type Heads = Readonly<Record<string, Head>>

export interface ChainFault {
  /**
   * [C1] altered: what it says is not what its hash was made of. [C2] missing: a place, or a run of places, that is not there.
   * [C3] forked: two postings claim one place. [C4] detached: it does not follow from the one before, so one of the two was written anew.
   * [C5] backwards: its clock is not after that of the one before.
   */
  readonly sort: 'altered' | 'missing' | 'forked' | 'detached' | 'backwards'
  readonly device: string
  readonly seq: number
  /** Last of the run, for places that are missing. */
  readonly to?: number
  readonly message: string
}

/**
 * Checks that nothing in the devices' chains was altered, lost or put in afterwards.
 * A chain that was cut off at its end, or whose last posting was written anew, shows only against a head noted before.
 * @param postings  of any devices, in any order
 */
export function verifyChain(postings: readonly Posting[], noted: Heads = {}): readonly ChainFault[] {
  const chains = new Map<string, Map<number, Posting[]>>()
  for (const posting of postings) {
    const chain = chains.get(posting.device) ?? new Map<number, Posting[]>()
    chains.set(posting.device, chain)
    const place = chain.get(posting.seq) ?? []
    chain.set(posting.seq, place)
    if (!place.some(({ hash }) => hash === posting.hash)) place.push(posting)
  }
  for (const device of Object.keys(noted)) if (!chains.has(device)) chains.set(device, new Map())
  return [...chains].sort(([a], [b]) => a < b ? -1 : 1).flatMap(([device, chain]) => verifyDevice(device, chain, noted[device]))
}

function verifyDevice(device: string, chain: ReadonlyMap<number, readonly Posting[]>, noted: Head | undefined): readonly ChainFault[] {
  const faults: ChainFault[] = []
  const fault = (sort: ChainFault['sort'], seq: number, sentence: string, to?: number) =>
    faults.push({ sort, device, seq, ...(to === undefined ? {} : { to }), message: `Device ${device}, posting ${seq}${to === undefined || to === seq ? '' : ` to ${to}`}: ${sentence}.` })
  let expected = 1
  let before: Posting | undefined
  const missing = (to: number) => { fault('missing', expected, 'missing', to); before = undefined }
  for (const seq of [...chain.keys()].sort((a, b) => a - b)) {
    if (seq > expected) missing(seq - 1)
    expected = seq + 1
    const here = chain.get(seq)!
    for (const posting of here) if (postingHash(posting) !== posting.hash) fault('altered', seq, `altered after it was written by ${posting.by}`)
    if (here.length > 1) fault('forked', seq, `${here.length} different postings claim this place; the device's book was copied and written to twice`)
    const posting = here[0]!
    if (before !== undefined && here.length === 1 && posting.prev !== before.hash) fault('detached', seq, `it does not follow from posting ${seq - 1}; one of the two was written anew`)
    if (before !== undefined && here.length === 1 && posting.clock <= before.clock) fault('backwards', seq, `its clock is not after that of posting ${seq - 1}`)
    before = here.length === 1 ? posting : undefined
    if (noted?.seq === seq && !here.some(({ hash }) => hash === noted.hash)) fault('altered', seq, 'it is not what was noted before')
  }
  if (noted !== undefined && noted.seq >= expected) missing(noted.seq)
  return faults
}

/** The last posting of each device, to be noted somewhere else and held against a later copy. */
export function headsOf(postings: readonly Posting[]): Heads {
  const heads = new Map<string, Head>()
  for (const { device, seq, hash } of postings) if (seq > (heads.get(device)?.seq ?? 0)) heads.set(device, { seq, hash })
  return Object.fromEntries([...heads].sort(([a], [b]) => a < b ? -1 : 1))
}
