import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { conflicts, fold, foldMore, newDevice, seen, writePostings } from '../../src/index.ts'
import type { Book, Draft, Posting } from '../../src/index.ts'
import { history, postingsOf, startMs } from './sample-postings.ts'

const sample = (entry: string, set: Draft['set'], more: Partial<Draft> = {}): Draft => ({ entry, kind: 'sample', set, ...more })
/** All of a book that anyone can see, in order. */
const seenOf = (book: Book) => ({
  all: [...book.all], postings: book.postings, lists: ['sample', 'pan', 'shot'].map(kind => book.of(kind)), conflicts: conflicts(book),
})

describe('folding', () => {
  const postings = postingsOf('d1', [
    sample('e1', { bag: 'B-1', note: 'rusty' }), sample('e2', { bag: 'B-2' }), sample('e1', { note: null, vein: 'Main' }, { why: 'wrong wall' }),
    sample('e2', {}, { struck: true, why: 'bag lost' }), sample('e3', { bag: 'B-3' }, { origin: 'csv:abc:2' }),
  ], 'Ines')
  const book = fold(postings)

  it('[F3] the last writer of each field', () => { expect(book.all.get('e1')?.fields).toEqual({ bag: 'B-1', vein: 'Main' }) })
  it('[F4] struck, with the reason, and restored', () => {
    expect(book.all.get('e2')).toMatchObject({ struck: true, struckWhy: 'bag lost', fields: { bag: 'B-2' } })
    const restored = foldMore(book, writePostings(seen(newDevice('d1'), postings), [sample('e2', {}, { struck: false })], { by: 'Ines', nowMs: startMs }).postings)
    expect(restored.all.get('e2')).toMatchObject({ struck: false, strikes: [{ struck: true, why: 'bag lost' }, { struck: false }] })
    expect(restored.all.get('e2')).not.toHaveProperty('struckWhy')
  })
  it('[F5] who began it, when, and from what', () => {
    expect(book.all.get('e3')).toMatchObject({ createdBy: 'Ines', createdAt: '2026-05-03T08:04:00.000Z', origin: 'csv:abc:2' })
    expect(book.all.get('e1')).toMatchObject({ createdAt: '2026-05-03T08:00:00.000Z', changedAt: '2026-05-03T08:02:00.000Z' })
  })
  it('[F5] a posting that takes the entry for another kind changes nothing', () => {
    const [stray] = postingsOf('d2', [{ entry: 'e3', kind: 'shot', set: { from: 'A1' } }]).map(posting => ({ ...posting, clock: '1999999999999-0000' }))
    const with_ = foldMore(book, [stray!])
    expect(with_.all.get('e3')).toMatchObject({ kind: 'sample', fields: { bag: 'B-3' }, strays: [stray!.hash] })
  })
  it('[F6] lists hold what is not struck, in order of beginning', () => {
    expect(book.of('sample').map(({ id }) => id)).toEqual(['e1', 'e3'])
    expect([...book.all.keys()]).toEqual(['e1', 'e2', 'e3'])
    expect(book.of('shot')).toEqual([])
  })
  it('[F7] every value stays, with who and why', () => {
    expect(book.all.get('e1')?.history['note']).toEqual([
      expect.objectContaining({ value: 'rusty', by: 'Ines', device: 'd1', posting: postings[0]!.hash }), expect.objectContaining({ value: null, why: 'wrong wall' }),
    ])
  })
  it('[F9] leaves lists of other kinds the same', () => {
    const more = postingsOf('d2', [{ entry: 'x1', kind: 'pan', set: { bag: 'B-1' } }])
    const next = foldMore(book, more)
    expect(next.of('sample')).toBe(book.of('sample'))
    expect(next.of('shot')).toBe(book.of('shot'))
    expect(next.of('pan')).not.toBe(book.of('pan'))
    expect(next.all.get('e1')).toBe(book.all.get('e1'))
    expect(book.of('pan')).toEqual([])
    expect(foldMore(next, [...more, ...postings])).toBe(next)
  })
  it('takes only books that were folded', () => { expect(() => foldMore({ all: new Map(), of: () => [], postings: 0 }, [])).toThrow(TypeError) })
})

describe('[F8] conflicts', () => {
  const [base] = postingsOf('d1', [sample('e1', { bag: 'B-1', vein: 'Main' })])
  const write = (device: string, known: readonly Posting[], set: Draft['set'], minutes: number) =>
    writePostings(seen(newDevice(device), known), [sample('e1', set)], { by: device, nowMs: startMs + minutes * 60_000, book: fold(known) }).postings
  const one = write('d2', [base!], { vein: 'East' }, 1)
  const two = write('d3', [base!], { vein: 'West', note: 'by the pillar' }, 2)
  const all = [base!, ...one, ...two]

  it('two who did not know of each other', () => {
    expect(conflicts(fold(all))).toMatchObject([{ entry: 'e1', kind: 'sample', field: 'vein', sayings: [{ value: 'East', by: 'd2' }, { value: 'West', by: 'd3' }] }])
    expect(fold(all).all.get('e1')?.fields['vein']).toBe('West')
  })
  it('one after the other is none', () => { expect(conflicts(fold([base!, ...one, ...write('d3', [base!, ...one], { vein: 'West' }, 2)]))).toEqual([]) })
  it('both wrote the same is none', () => { expect(conflicts(fold([base!, ...one, ...write('d3', [base!], { vein: 'East' }, 2)]))).toEqual([]) })
  it('is settled by whoever writes again having seen both', () => { expect(conflicts(fold([...all, ...write('d1', all, { vein: 'East' }, 3)]))).toEqual([]) })
  it('is not settled by one of them writing again without having seen the other', () => {
    const again = write('d3', [base!, ...two], { vein: 'North' }, 4)
    expect(conflicts(fold([...all, ...again]))).toMatchObject([{ sayings: [{ value: 'East' }, { value: 'North' }] }])
  })
  it('of a struck entry are nobody\'s worry', () => {
    const strike = writePostings(seen(newDevice('d1'), all), [sample('e1', {}, { struck: true })], { by: 'd1', nowMs: startMs + 240_000 }).postings
    expect(conflicts(fold([...all, ...strike]))).toEqual([])
  })
})

describe('[F1] merging', () => {
  const runs = { seed: 20260503, numRuns: 150 }
  const shuffled = history.chain(postings => fc.tuple(fc.constant(postings),
    fc.shuffledSubarray([...postings, ...postings], { minLength: postings.length * 2 })))

  it('any shuffle, with repeats, folds to the same book', () => {
    fc.assert(fc.property(shuffled, ([postings, mixed]) => { expect(seenOf(fold(mixed))).toEqual(seenOf(fold(postings))) }), runs)
  })
  it('[F9] any split, folded piece by piece, is the full fold', () => {
    fc.assert(fc.property(shuffled, fc.array(fc.nat(), { maxLength: 6 }), ([postings, mixed], cuts) => {
      const at = [0, ...cuts.map(cut => cut % (mixed.length + 1)), mixed.length].sort((a, b) => a - b)
      const pieces = at.slice(1).map((end, i) => mixed.slice(at[i], end))
      expect(seenOf(pieces.reduce(foldMore, fold([])))).toEqual(seenOf(fold(postings)))
    }), runs)
  })
  it('is commutative, associative and idempotent', () => {
    const parts = history.chain(postings => fc.tuple(...[0, 1, 2].map(() => fc.subarray([...postings]))))
    const merge = (...sets: readonly (readonly Posting[])[]) => seenOf(fold(sets.flat()))
    fc.assert(fc.property(parts, ([a = [], b = [], c = []]) => {
      expect(merge(a, b)).toEqual(merge(b, a))
      expect(seenOf(foldMore(fold([...a, ...b]), c))).toEqual(seenOf(foldMore(fold(a), [...b, ...c])))
      expect(merge(a, a)).toEqual(merge(a))
      expect(merge(a, b, a)).toEqual(merge(a, b))
    }), runs)
  })
  it('[F9] a list is the same array exactly when none of its entries was touched', () => {
    fc.assert(fc.property(history, fc.nat(), (postings, cut) => {
      const at = cut % postings.length
      const before = fold(postings.slice(0, at))
      const next = foldMore(before, [postings[at]!])
      for (const kind of ['sample', 'pan', 'shot']) {
        const entry = postings[at]!.entry
        const concerned = before.all.get(entry)?.kind === kind || next.all.get(entry)?.kind === kind
        expect(next.of(kind) === before.of(kind)).toBe(!concerned)
      }
    }), runs)
  })
  it('changes nothing it is given', () => {
    fc.assert(fc.property(history, (postings) => {
      const frozen = postings.map(posting => Object.freeze({ ...posting, set: Object.freeze({ ...posting.set }) }))
      const book = fold(Object.freeze(frozen.slice(1)))
      const before = seenOf(book)
      foldMore(book, Object.freeze(frozen))
      expect(seenOf(book)).toEqual(before)
    }), runs)
  })
})
