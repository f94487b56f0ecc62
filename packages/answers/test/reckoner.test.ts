import { existsSync } from 'node:fs'
import { foldMore, fold } from '@lodebook/book'
import { describe, expect, it } from 'vitest'
import { createReckoner } from '../src/index.ts'
import type { Answer, Grade, Pay, VeinAt, Workings } from '../src/index.ts'
import { nineSamples, SmallBook } from './small-book.ts'

/** Every answer that can be reached by opening figures. */
function opened(answers: readonly Answer<unknown>[], seen = new Set<Answer<unknown>>()): Set<Answer<unknown>> {
  for (const answer of answers) {
    if (seen.has(answer)) continue
    seen.add(answer)
    opened(answer.parts, seen)
  }
  return seen
}

const figuresOf = (w: Workings, v: VeinAt, g: Grade, p: Pay) => [
  ...w.stations.map(s => s.answer), ...w.figures, v.strike, v.dip, v.width as Answer, ...v.widths.map(x => x.answer),
  g.ounces, g.tonnes, g.grade, g.width, g.audit, ...g.panels.map(x => x.answer), ...g.samples.map(x => x.answer),
  p.perDay, p.personDays, p.ouncesWon, p.breakEven, p.chance, ...p.inputs, ...p.drivers.map(d => d.answer),
]

describe('reckoner', () => {
  it('[R1] an empty book says for each question what is missing, and never throws', () => {
    const reckoner = createReckoner(fold([]))
    for (const part of ['workings', 'vein', 'lostPart', 'grade', 'pay'] as const) {
      const answer = reckoner.answer(part)
      expect(answer).toHaveProperty('notEnough', true)
      expect((answer as { wanted: readonly unknown[] }).wanted.length).toBeGreaterThan(0)
    }
    expect(reckoner.answer('secondLooks')).toEqual([])
  })

  it('[R2] from field book to wage: places, vein, grade and pay come out of what was written', () => {
    const reckoner = createReckoner(nineSamples().book)
    const w = reckoner.answer('workings') as Workings, v = reckoner.answer('vein') as VeinAt, g = reckoner.answer('grade') as Grade, p = reckoner.answer('pay') as Pay
    const a3 = w.stations.find(s => s.name === 'A3')!
    expect(a3.point[0]).toBeCloseTo(100, 6)
    expect(a3.point[1]).toBeCloseTo(216, 6)
    // The reading says 000/60; the samples' places lie on that plane's strike.
    expect(Math.abs(((v.strike.value + 180) % 360) - 180)).toBeLessThan(2)
    expect(v.dip.value).toBeGreaterThan(50)
    expect(g.samples.filter(s => s.used)).toHaveLength(9)
    expect(g.ounces.range!.low).toBeLessThan(g.ounces.value)
    expect(g.ounces.range!.high).toBeGreaterThan(g.ounces.value)
    expect(p.twenty).toHaveLength(20)
    expect([...p.twenty].sort((a, b) => a - b)).toEqual(p.twenty)
  })

  it('[R3] nine samples never print as certainty: no variogram is drawn, the range is wide, and the answer says why', () => {
    const grade = createReckoner(nineSamples().book).answer('grade') as Grade
    expect(grade.spatial).toBe(false)
    expect(grade.ounces.range!.high / grade.ounces.range!.low).toBeGreaterThan(1.8)
    expect(grade.cautions.join(' ')).toContain('too few')
  })

  it('[R4] changing one assay computes again only what hangs on it', () => {
    const small = nineSamples()
    let book = small.book
    const reckoner = createReckoner(book)
    reckoner.answer('workings'); reckoner.answer('pay'); reckoner.answer('secondLooks')
    const before = { ...reckoner.runs }
    const was = (reckoner.answer('grade') as Grade).ounces.value
    small.write('assay', { bag: 'B-5', gold: '240 g/t' }, 'assay-B-5')
    book = foldMore(book, small.postings.slice(-1))
    reckoner.setBook(book)
    expect((reckoner.answer('grade') as Grade).ounces.value).toBeGreaterThan(was)
    reckoner.answer('workings'); reckoner.answer('pay')
    const ran = Object.keys(reckoner.runs).filter(name => reckoner.runs[name] !== before[name]).sort()
    expect(ran).toEqual(['beliefs', 'grade', 'grade ground', 'grade samples', 'looks', 'pay', 'pay basis'])
  })

  it('[R5] the same book gives the same numbers', () => {
    const [one, other] = [createReckoner(nineSamples().book), createReckoner(nineSamples().book)]
    expect((one.answer('pay') as Pay).perDay.value).toBe((other.answer('pay') as Pay).perDay.value)
    expect((one.answer('grade') as Grade).panels.map(p => p.ounces)).toEqual((other.answer('grade') as Grade).panels.map(p => p.ounces))
  })

  it('[R6] every figure opens down to entries of the book or a stated assumption', () => {
    const small = nineSamples()
    const { book } = small
    const r = createReckoner(book)
    const all = opened(figuresOf(r.answer('workings') as Workings, r.answer('vein') as VeinAt, r.answer('grade') as Grade, r.answer('pay') as Pay))
    expect(all.size).toBeGreaterThan(50)
    for (const answer of all) {
      const under = [...opened([answer])]
      const grounds = under.flatMap(a => [...a.from, ...a.assumed.map(x => x.name)])
      expect(grounds.length, answer.id).toBeGreaterThan(0)
      for (const id of under.flatMap(a => a.from)) expect(book.all.has(id), `${answer.id} rests on ${id}`).toBe(true)
      expect(answer.sentence.length, answer.id).toBeGreaterThan(10)
      expect(existsSync(new URL(`../../../docs/methods/${answer.method.page}.md`, import.meta.url)), `${answer.id}: docs/methods/${answer.method.page}.md`).toBe(true)
    }
  })

  it('[R7] a struck sample no longer counts', () => {
    const small = new SmallBook()
    Object.assign(small, nineSamples())
    const all = createReckoner(small.book).answer('grade') as Grade
    const sample = small.book.of('sample').find(s => s.fields.bag === 'B-5')!
    const struck = fold([...small.postings, { ...small.postings.at(-1)!, clock: '9999999999999-0000', entry: sample.id, kind: 'sample', set: {}, struck: true, hash: 'x' }])
    const without = createReckoner(struck).answer('grade') as Grade
    expect(without.samples.filter(s => s.used)).toHaveLength(8)
    expect(without.ounces.value).toBeLessThan(all.ounces.value)
  })

  it('[R8] the words safe and OK to enter are never said', () => {
    const r = createReckoner(nineSamples().book)
    expect(JSON.stringify([r.answer('workings'), r.answer('vein'), r.answer('grade'), r.answer('pay')])).not.toMatch(/\bsafe\b|OK to enter/i)
  })
})
