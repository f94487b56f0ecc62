import { byChain, checkDraft, clockTime, conflicts, fold, importLines, isError, MemoryStore, verifyChain } from '@lodebook/book'
import { describe, expect, it } from 'vitest'
import { demoLines, makeDemo } from '../src/index.ts'
import { entriesOf, textOf } from './read-notes.ts'

const demo = makeDemo(1), book = fold(demo.postings)
const now = Date.parse('2026-11-25T12:00:00Z')

describe('the demo\'s book', () => {
  it('is the same to the byte for the same seed, and another for another seed', () => {
    const again = makeDemo(1)
    expect(JSON.stringify(again.notes) === JSON.stringify(demo.notes)).toBe(true)
    expect(JSON.stringify(makeDemo(2).notes) === JSON.stringify(demo.notes)).toBe(false)
  })

  it('is written as a book file that any door takes', async () => {
    const lines = await demoLines(1), store = new MemoryStore()
    const taken = await importLines(() => [new TextEncoder().encode(lines)], store)
    expect(taken).toMatchObject({ ok: true, added: demo.postings.length, faults: [] })
    const kept = await store.since(), own = [...demo.postings].sort(byChain)
    expect(kept.map(posting => posting.hash)).toEqual(own.map(posting => posting.hash))
  })

  it.each([['shot', 120], ['structure', 108], ['target', 150], ['sample', 77], ['sweep', 25], ['label-roll', 1], ['assay', 40], ['tie', 2], ['width', 36], ['mine', 1], ['standard', 3], ['worked-out', 1]] as const)(
    'holds of %s %i', (kind, count) => { expect(book.of(kind)).toHaveLength(count) })

  it('holds the rest in fair number: pans for every bag of rock, splits, relics of two periods, air over months, shifts, costs', () => {
    expect(book.of('pan')).toHaveLength(62 + 6) // and for the pieces that the detector rang on, but for the one that was lost
    expect(book.of('split')).toHaveLength(32)
    const spans = book.of('relic').map(relic => [relic.fields.from as number, relic.fields.to as number] as const)
    expect(spans.some(([, to]) => to < 1900)).toBe(true)
    expect(spans.some(([from]) => from >= 1925)).toBe(true)
    const months = new Set(book.of('air').map(reading => (reading.fields.taken as string).slice(0, 7)))
    expect(months.size).toBeGreaterThanOrEqual(5)
    for (const kind of ['heading', 'instrument', 'density', 'ground', 'hazard', 'going-in', 'work', 'cost', 'price', 'assumption']) {
      expect(book.of(kind).length, kind).toBeGreaterThan(1)
    }
  })

  it('has blanks, standards and duplicates among its samples and their assays among the others', () => {
    const roles = (role: string) => book.of('sample').filter(sample => sample.fields.role === role)
    expect([roles('duplicate').length, roles('blank').length, roles('standard').length]).toEqual([4, 4, 4])
    const assayed = new Set(book.of('assay').map(assay => assay.fields.bag as string))
    for (const check of [...roles('blank'), ...roles('standard')]) expect(assayed).toContain(check.fields.bag)
    for (const twin of roles('duplicate')) {
      expect(assayed).toContain(`${twin.fields.bag as string}A`)
      expect(assayed).toContain(`${twin.fields.duplicateOf as string}A`)
    }
  })

  it('has two loops: two more shots between different pairs of stations than a tree would need', () => {
    const pairs = new Set(book.of('shot').map(shot => [shot.fields.from as string, shot.fields.to as string].sort().join(' ')))
    const stations = new Set([...pairs].flatMap(pair => pair.split(' ')))
    expect(pairs.size - (stations.size - 1)).toBe(2)
  })

  it('passes every check of the book, entry by entry, with no doubt either, but for a number used twice', () => {
    const problems = [...book.all.values()].flatMap(entry => checkDraft(entry.kind, entry.fields, { now, book, entry: entry.id }))
    // Two people out of reach of each other put one number on two bags, which each of their devices had to take.
    expect(problems.map(p => [p.field, p.value, isError(p)])).toEqual([['bag', demo.truth.loose.twice, true], ['bag', demo.truth.loose.twice, true]])
    const careful = fold(makeDemo(1, { mistakes: false }).unsealed)
    expect([...careful.all.values()].flatMap(entry => checkDraft(entry.kind, entry.fields, { now, book: careful, entry: entry.id }))).toEqual([])
  })

  it('adds up to the same entries unsealed', () => {
    const plain = fold(demo.unsealed)
    expect(plain.all.size).toBe(book.all.size)
    for (const entry of book.all.values()) {
      const { fields, struck } = plain.all.get(entry.id)!
      expect(struck).toBe(entry.struck)
      expect(fields).toEqual(entry.fields)
    }
  })

  it('is written by three devices in unbroken chains, all of it in 2026 before November', () => {
    expect(new Set(demo.postings.map(posting => posting.device))).toEqual(new Set(['phone-wren', 'phone-ives', 'laptop-camp']))
    expect(verifyChain(demo.postings)).toEqual([])
    const times = demo.postings.map(posting => clockTime(posting.clock)).sort()
    expect(times[0]! >= '2026-04-01').toBe(true)
    expect(times.at(-1)! < '2026-11-01').toBe(true)
  })

  it('keeps the crew\'s second thoughts: one entry struck through, one field that two people wrote apart, corrections with their history', () => {
    expect([...book.all.values()].filter(entry => entry.struck)).toHaveLength(1)
    expect(conflicts(book).map(conflict => conflict.field)).toEqual(['note'])
    expect(book.of('sample').some(sample => (sample.history.collector?.length ?? 0) > 1)).toBe(true)
  })

  it('is written in the crew\'s own units, mixed', () => {
    const texts = (kind: string, field: string) => book.of(kind).map(entry => (entry.fields[field] as { text?: string } | undefined)?.text ?? '').join('\n')
    for (const form of [/\d ft \d+ in/, /\d+'\d*½?"/, /^\d+\.\d\d m$/m]) expect(texts('shot', 'distance')).toMatch(form)
    expect(texts('assay', 'gold')).toMatch(/oz\/ton/)
    expect(texts('assay', 'gold')).toMatch(/g\/t/)
    expect(texts('sample', 'massWet')).toMatch(/lb/)
    expect(texts('sample', 'massWet')).toMatch(/kg/)
    expect(texts('shot', 'azimuth')).toMatch(/[NS] [\d.]+ [EW]/)
  })

  it('says that it is invented: the mine, its district, its results, its prices', () => {
    const mine = book.of('mine')[0]!.fields
    expect(mine.name).toMatch(/invented/)
    expect(mine.district).toMatch(/invented/)
    expect(mine.note).toMatch(/INVENTED DATA/)
    for (const entry of [...book.of('assay'), ...book.of('cost'), ...book.of('price'), ...book.of('assumption')]) expect(entry.fields.note).toMatch(/invented/i)
  })
})

describe('the crew\'s mistakes', () => {
  it('are five, each in the entries that the truth names', () => {
    expect(demo.truth.mistakes.map(mistake => mistake.sort).sort()).toEqual(['backsight', 'bags swapped', 'blank carries gold', 'unit slip', 'width down the dip'])
    for (const mistake of demo.truth.mistakes) for (const entry of mistake.entries) expect(book.all.has(entry), entry).toBe(true)
  })

  it('stand in the book: a backsight ten degrees off, a blank with gold, a width three times too wide, feet written as metres', () => {
    const fields = (sort: string) => book.all.get(demo.truth.mistakes.find(mistake => mistake.sort === sort)!.entries[0]!)!.fields
    const value = (sort: string, field: string) => (fields(sort)[field] as { value: number }).value
    const off = value('backsight', 'backAzimuth') - value('backsight', 'azimuth') - 180
    expect(Math.abs(off - 360 * Math.round(off / 360))).toBeGreaterThan(6)
    expect(value('blank carries gold', 'gold')).toBeGreaterThan(0.5)
    expect(fields('width down the dip').direction).toBe('down the dip')
    expect(value('width down the dip', 'measured')).toBeGreaterThan(0.55)
    expect((fields('unit slip').width as { text: string }).text).toMatch(/ m$/)
  })

  it('swap two bags: what was panned of each is what the other weighed', () => {
    const [a, b] = demo.truth.mistakes.find(mistake => mistake.sort === 'bags swapped')!.entries.map(entry => [...demo.truth.bags.values()].find(bag => bag.entry === entry)!)
    const panned = (bag: string) => (book.of('pan').find(pan => pan.fields.bag === bag)!.fields.mass as { value: number }).value
      + (book.of('split').find(split => split.fields.of === bag)!.fields.mass as { value: number }).value
    expect(panned(a!.bag) / b!.grams).toBeCloseTo(1, 1)
    expect(panned(b!.bag) / a!.grams).toBeCloseTo(1, 1)
  })

  it('are left out when the crew is careful, and nothing else changes', () => {
    const careful = makeDemo(1, { mistakes: false })
    expect(careful.truth.mistakes).toEqual([])
    const key = ({ draft: { entry, why } }: typeof demo.notes[number]) => `${entry} ${why ?? ''}`, written = new Map(demo.notes.map(note => [key(note), JSON.stringify(note)]))
    const differing = careful.notes.filter(note => JSON.stringify(note) !== written.get(key(note)))
    const named = new Set(demo.truth.mistakes.flatMap(mistake => mistake.entries))
    const apart = differing.filter(note => !named.has(note.draft.entry) && !['pan', 'split', 'assay', 'custody', 'target-check'].includes(note.draft.kind) && note.draft.set.method !== 'piece')
    expect(apart).toEqual([])
    expect(entriesOf(careful, 'width').some(width => textOf(width, 'direction') === 'down the dip')).toBe(false)
  })
})

it.each([12, 40, 70, 140])('makes %i samples when so many are asked for, four assays to seven of them', (samples) => {
  const other = makeDemo(3, { samples })
  expect(entriesOf(other, 'sample').filter(s => textOf(s, 'method') !== 'piece')).toHaveLength(samples)
  expect(entriesOf(other, 'assay').length / samples).toBeCloseTo(4 / 7, 1)
})
