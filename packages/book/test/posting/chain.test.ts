import { describe, expect, it } from 'vitest'
import { headsOf, postingHash, verifyChain } from '../../src/index.ts'
import type { Heads, Posting } from '../../src/index.ts'
import { postingsOf } from './sample-postings.ts'

const chain = postingsOf('d1', ['B-1', 'B-2', 'B-3', 'B-4', 'B-5'].map((bag, i) => ({ entry: `e${i}`, kind: 'sample', set: { bag } })))
const other = postingsOf('d2', ['B-6', 'B-7'].map((bag, i) => ({ entry: `f${i}`, kind: 'sample', set: { bag } })))
const without = (...seqs: readonly number[]) => chain.filter(({ seq }) => !seqs.includes(seq))
const faults = (postings: readonly Posting[], noted?: Heads) =>
  verifyChain(postings, noted).map(({ sort, device, seq, to }) => `${sort} ${device} ${seq}${to === undefined ? '' : `-${to}`}`)
const rehashed = (posting: Posting): Posting => ({ ...posting, hash: postingHash(posting) })
const swap = (at: number, make: (posting: Posting) => Posting) => chain.map(posting => posting.seq === at ? make(posting) : posting)

describe('chains', () => {
  it('are whole in any order', () => { expect(faults([...other, ...chain].reverse())).toEqual([]) })
  it('of nothing are whole', () => { expect(faults([])).toEqual([]) })
  it('[C1] altered: the grade of one bag was changed afterwards', () => {
    expect(verifyChain(swap(3, posting => ({ ...posting, set: { bag: 'B-9' } })))).toEqual([
      { sort: 'altered', device: 'd1', seq: 3, message: 'Device d1, posting 3: altered after it was written by crew of d1.' },
    ])
  })
  it('[C2] missing, one or a run, also at the beginning', () => {
    expect(faults([...without(3), ...other])).toEqual(['missing d1 3-3'])
    expect(faults(without(1, 2))).toEqual(['missing d1 1-2'])
    expect(faults(without(2, 4))).toEqual(['missing d1 2-2', 'missing d1 4-4'])
    expect(verifyChain(without(2, 3))[0]?.message).toBe('Device d1, posting 2 to 3: missing.')
  })
  it('[C2] cut off at the end shows against a head noted before', () => {
    expect(faults(without(5, 4))).toEqual([])
    expect(faults(without(5, 4), headsOf(chain))).toEqual(['missing d1 4-5'])
    expect(faults(other, headsOf(chain))).toEqual(['missing d1 1-5'])
  })
  it('[C3] forked', () => {
    const second = rehashed({ ...chain[4]!, by: 'Copy' })
    expect(faults([...chain, second])).toEqual(['forked d1 5'])
    expect(faults([...chain, ...chain])).toEqual([])
  })
  it('[C4] detached: written anew with a hash that fits', () => {
    expect(faults(swap(3, posting => rehashed({ ...posting, set: { bag: 'B-9' } })))).toEqual(['detached d1 4'])
  })
  it('[C1] the last one written anew shows against a head noted before', () => {
    const anew = swap(5, posting => rehashed({ ...posting, set: { bag: 'B-9' } }))
    expect(faults(anew)).toEqual([])
    expect(faults(anew, headsOf(chain))).toEqual(['altered d1 5'])
  })
  it('[C5] backwards', () => {
    expect(faults(swap(5, posting => rehashed({ ...posting, clock: chain[0]!.clock })))).toEqual(['backwards d1 5'])
  })
  it('heads are the last of each device', () => {
    expect(headsOf([...other, ...chain])).toEqual({ d1: { seq: 5, hash: chain[4]!.hash }, d2: { seq: 2, hash: other[1]!.hash } })
  })
})
