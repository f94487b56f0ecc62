import { describe, expect, it } from 'vitest'
import { checkPosting, fold, newDevice, newEntryId, postingHash, seen, upgrade, verifyChain, writePostings } from '../../src/index.ts'
import type { Draft, Posting } from '../../src/index.ts'
import { postingsOf, startMs } from './sample-postings.ts'

const bag = (entry: string, name: string): Draft => ({ entry, kind: 'sample', set: { bag: name } })
const remade = (posting: Posting, change: Partial<Posting> & Record<string, unknown>): Posting => {
  const changed = { ...posting, ...change }
  return { ...changed, hash: postingHash(changed) }
}

describe('[P2] a device\'s chain', () => {
  const state = newDevice('d1')
  const first = writePostings(state, [bag('e1', 'B-1'), bag('e2', 'B-2')], { by: 'Ines', nowMs: startMs })
  it('counts from 1 and carries the hash before', () => {
    expect(first.postings.map(({ seq }) => seq)).toEqual([1, 2])
    expect(first.postings.map(({ prev }) => prev)).toEqual(['', first.postings[0]!.hash])
    expect(first.state).toMatchObject({ device: 'd1', seq: 2, last: first.postings[1]!.hash })
    expect(state.seq).toBe(0)
  })
  it('goes on where it stopped, also from what a store has kept', () => {
    const again = seen(newDevice('d1'), [...first.postings].reverse())
    expect(again).toEqual(first.state)
    const more = writePostings(again, [bag('e3', 'B-3')], { by: 'Ines', nowMs: startMs })
    expect(verifyChain([...first.postings, ...more.postings])).toEqual([])
  })
  it('gives new entries ids of their own', () => {
    expect([newEntryId(first.state), newEntryId(first.state, 1), newEntryId(newDevice('d2'))]).toEqual(['d1.3', 'd1.4', 'd2.1'])
  })
  it('[P3] a correction comes after what it corrects, though the clock is an hour slow', () => {
    const slow = seen(newDevice('d2'), first.postings)
    const correction = writePostings(slow, [bag('e1', 'B-7')], { by: 'Tomas', nowMs: startMs - 3_600_000, book: fold(first.postings) })
    expect(fold([...correction.postings, ...first.postings]).all.get('e1')?.fields).toEqual({ bag: 'B-7' })
    expect(correction.postings[0]!.saw).toEqual({ bag: [`${first.postings[0]!.clock}@d1`] })
  })
  it('takes no draft that makes no posting', () => {
    expect(() => writePostings(state, [{ entry: 'e1', kind: 'sample', set: { bag: 7 } }], { by: 'Ines', nowMs: startMs })).toThrow(/Bag/)
    expect(() => writePostings(state, [{ entry: 'e1', kind: 'nothing', set: {} }], { by: 'Ines', nowMs: startMs })).toThrow(/Kind/)
    expect(() => writePostings(state, [bag('e1', 'B-1')], { by: '', nowMs: startMs })).toThrow(/by/)
    expect(() => writePostings(state, [{ entry: 'e1', kind: 'sample', set: { note: '\ud800' } }], { by: 'Ines', nowMs: startMs })).toThrow()
  })
})

describe('[P6] every door asks the same', () => {
  const [posting] = postingsOf('d1', [{ ...bag('e1', 'B-1'), why: 'first', origin: 'csv:abc:2', struck: false }]) as [Posting]
  it('takes what it wrote', () => {
    expect(checkPosting(posting)).toBeUndefined()
    expect(checkPosting(JSON.parse(JSON.stringify(posting)))).toBeUndefined()
  })
  it.each<[string, Record<string, unknown>, string]>([
    ['no device', { device: '' }, 'device'], ['place 0', { seq: 0 }, 'seq'], ['half a place', { seq: 1.5 }, 'seq'], ['a second without the first', { seq: 2 }, 'prev'],
    ['no clock', { clock: '2026-05-03' }, 'clock'], ['a clock past 2200', { clock: '9999999999999-0000' }, 'clock'], ['nobody', { by: '' }, 'by'],
    ['an unknown kind', { kind: 'toString' }, 'kind'], ['a field of another kind', { set: { azimuth: 3 } }, 'azimuth'], ['a wrong value', { set: { bag: 3 } }, 'bag'],
    ['an unknown part', { colour: 'red' }, ''], ['what was seen as text', { saw: { bag: '1' } }, 'saw.bag'], ['an entry with blanks', { entry: 'e 1' }, 'entry'],
    ['a list for fields', { set: [] }, 'set'], ['no reason', { why: '' }, 'why'],
  ])('refuses %s', (_, change, field) => { expect(checkPosting(remade(posting, change))?.field).toBe(field) })
  it.each([[null], [undefined], ['posting'], [[]], [{}]])('refuses %j', (raw) => { expect(checkPosting(raw)?.message).toMatch(/^Posting[:,] /) })
  it('[C1] refuses an altered one, saying which', () => {
    expect(checkPosting({ ...posting, by: 'Someone' })?.message).toBe('Posting 1 of device d1: it was altered after it was written; its hash does not fit.')
  })
})

describe('[P7] versions', () => {
  const [posting] = postingsOf('d1', [bag('e1', 'B-1')]) as [Posting]
  it('opens the present one', () => { expect(upgrade(posting)).toEqual({ ok: true, posting }) })
  it('refuses a newer one in words', () => {
    expect(upgrade({ ...posting, v: 2 })).toMatchObject({ ok: false, problem: { field: 'v', message: expect.stringContaining('newer Lodebook') as string } })
  })
  it.each([[{ v: 0 }], [{ v: '1' }], [{}], [null]])('refuses %j', (raw) => { expect(upgrade(raw).ok).toBe(false) })
})
