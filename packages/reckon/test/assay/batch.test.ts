import { describe, expect, it } from 'vitest'
import { expectedSpread, insertionPlan, touchedBy } from '../../src/assay/index.ts'
import type { RunPlace } from '../../src/assay/index.ts'
import { nuggetCount } from '../../src/sampling/index.ts'

const bags = (...expected: number[]) => expected.map((e, i) => ({ bag: `B${i + 1}`, expected: e }))
const words = (plan: ReturnType<typeof insertionPlan>) => plan.places.map(p => p.what === 'bag' ? p.bag : p.what === 'standard' ? `s${p.standard}` : p.what === 'duplicate' ? `d${p.bag}` : 'blank')

describe('what goes among the bags of the next batch', () => {
  it('[IP1] a blank first and right after the richest, a second split of a rich bag, a standard amid them', () => {
    expect(words(insertionPlan(bags(1, 2, 9, 3, 4), 1))).toEqual(['blank', 'B1', 'B2', 'B3', 'blank', 's0', 'B4', 'B5', 'dB5'])
  })

  it('[IP2] counts what it put in, gives a reason for each, and keeps the bags in their order', () => {
    const plan = insertionPlan(bags(...Array.from({ length: 40 }, (_, i) => (i * 7) % 11)), 2)
    expect(plan.places.filter(p => p.what === 'bag').map(p => p.bag)).toEqual(Array.from({ length: 40 }, (_, i) => `B${i + 1}`))
    for (const what of ['blank', 'standard', 'duplicate'] as const) expect(plan[`${what}s`]).toBe(plan.places.filter(p => p.what === what).length)
    expect([plan.standards, plan.duplicates]).toEqual([4, 3])
    expect(plan.places.filter(p => p.what === 'standard').map(p => p.standard)).toEqual([0, 1, 0, 1])
    expect(plan.places.every(p => (p.why === '') === (p.what === 'bag'))).toBe(true)
    expect(plan.places.find(p => p.what === 'blank' && p.why.startsWith('right after'))!.why).toContain('B')
  })

  it('[IP3] no more than fifteen bags lie between blanks, however even they are', () => {
    const { places } = insertionPlan(bags(...new Array<number>(47).fill(1).map((v, i) => i < 5 ? 2 : v)), 0)
    let since = 0, most = 0
    for (const p of places) { since = p.what === 'blank' ? 0 : p.what === 'bag' ? since + 1 : since; most = Math.max(most, since) }
    expect(most).toBe(15)
    expect(places.filter(p => p.why === '15 bags since the last')).toHaveLength(2)
  })

  it('[IP4] the first of equals is taken for the richest, and there is always one', () => {
    expect(words(insertionPlan(bags(3, 3), 0))).toEqual(['blank', 'B1', 'blank', 'dB1', 'B2'])
    expect(words(insertionPlan(bags(3), 3))).toEqual(['blank', 'B1', 'blank', 'dB1', 's0'])
    expect(insertionPlan([], 2)).toEqual({ places: [], blanks: 0, standards: 0, duplicates: 0 })
  })

  it('[IP5] refuses counts and guesses that are none', () => {
    for (const n of [-1, 0.5, Number.NaN]) expect(() => insertionPlan(bags(1), n)).toThrow('standards')
    for (const e of [-1, Number.NaN, Infinity]) expect(() => insertionPlan(bags(1, e), 1)).toThrow('bags[1].expected')
  })
})

describe('what a failed control puts in question', () => {
  const bag: RunPlace = {}, control = (sort: string, passed: boolean): RunPlace => ({ control: { sort, passed } })
  const good = control('blank', true), bad = control('blank', false), other = control('standard', true)

  it('[TB1] all bags between the last control of its sort that passed and the next that did', () => {
    expect(touchedBy([bag, good, bag, other, bag, bad, bag, bag, good, bag], 5)).toEqual([2, 4, 6, 7])
  })
  it('[TB2] to the ends where none passed, over another failed one', () => {
    expect(touchedBy([bag, bad, bag, bad, bag], 1)).toEqual([0, 2, 4])
    expect(touchedBy([bad], 0)).toEqual([])
    expect(touchedBy([good, bad, good], 1)).toEqual([])
  })
  it('[TB3] refuses a place that is no failed control', () => {
    for (const at of [0, 1, 2, 9, -1]) expect(() => touchedBy([bag, good, other], at)).toThrow('failed')
  })
})

describe('how far one determination ought to stray', () => {
  it('[ES1] is the count of grains alone where nothing else errs, and adds the rest as squares', () => {
    const alone = expectedSpread({ mass: 30, grain: 0.2, relativeSd: 0 }, 12)
    expect(alone).toBeCloseTo(nuggetCount({ massG: 30, gradeGPerT: 12, grainMg: 0.2 }).relativeSd, 12)
    expect(expectedSpread({ mass: 30, grain: 0.2, relativeSd: 0.1 }, 12)).toBeCloseTo(Math.hypot(alone, 0.1), 12)
    expect(expectedSpread({ mass: 30, grain: 0.2, relativeSd: 0, recovery: 0.25 }, 12)).toBeCloseTo(2 * alone, 12)
  })
  it('[ES2] refuses what can be no determination', () => {
    for (const recovery of [0, 1.01, -1, Number.NaN]) expect(() => expectedSpread({ mass: 1, grain: 1, relativeSd: 0, recovery }, 1)).toThrow('recovery')
    for (const relativeSd of [-0.1, Number.NaN, Infinity]) expect(() => expectedSpread({ mass: 1, grain: 1, relativeSd }, 1)).toThrow('relativeSd')
    expect(() => expectedSpread({ mass: 0, grain: 1, relativeSd: 0 }, 1)).toThrow('mass')
    expect(() => expectedSpread({ mass: 1, grain: 0, relativeSd: 0 }, 1)).toThrow('grain')
    expect(() => expectedSpread({ mass: 1, grain: 1, relativeSd: 0 }, 0)).toThrow('grade')
    expect(expectedSpread({ mass: 1, grain: 1, relativeSd: 0, recovery: 1 }, 1000)).toBe(1)
  })
})
