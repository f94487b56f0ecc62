import { InputError } from '@lodebook/reckon'
import { cellWeights, polygonWeights, topCutStudy } from '@lodebook/reckon/estimate'
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const walker = readFileSync(new URL('../../../../checks/data/walker_lake_sample470.csv', import.meta.url), 'utf8').trim().split('\n')
const head = walker[0]!.toLowerCase().replaceAll('"', '').split(','), column = (name: string) => head.indexOf(name)
const rows = walker.slice(1).map(line => line.split(',').map(Number)).map(r => ({ along: r[column('x')]!, down: r[column('y')]!, v: r[column('v')]! }))
const mean = (values: readonly number[], weights: ArrayLike<number>) => values.reduce((s, v, i) => s + v * weights[i]!,
  0) / Array.from(weights).reduce((s, w) => s + w, 0)

describe('declustering', () => {
  it('[DC1] Walker Lake: the plain mean of V is 435.3 where the ground holds 277.98 (checks 5.7, V); both ways undo most of it', () => {
    const values = rows.map(r => r.v), plain = mean(values, values.map(() => 1))
    expect(plain).toBeCloseTo(435.3, 0)
    const ground = Array.from({ length: 65 * 75 }, (_, i) => ({ along: 2 + 4 * (i % 65), down: 2 + 4 * Math.floor(i / 65), area: 16 }))
    expect(Math.abs(mean(values, cellWeights(rows, 20)) - 277.98)).toBeLessThan(0.2 * (plain - 277.98))
    expect(Math.abs(mean(values, polygonWeights(rows, ground)) - 277.98)).toBeLessThan(0.15 * (plain - 277.98))
  })

  it('[DC2] one sample, samples at one spot, evenly spread ones: all count alike', () => {
    expect(cellWeights([{ along: 1, down: 1 }], 2)[0]).toBeCloseTo(1, 12)
    for (const w of cellWeights([{ along: 1, down: 1 }, { along: 1, down: 1 }], 2)) expect(w).toBeCloseTo(1, 12)
    for (const w of cellWeights(Array.from({ length: 9 }, (_, i) => ({ along: 10 * (i % 3), down: 10 * Math.floor(i / 3) })), 3)) expect(w).toBeCloseTo(1, 12)
    expect([...polygonWeights([{ along: 0, down: 0 }, { along: 0, down: 0 }], [{ along: 1, down: 1, area: 3 }])]).toEqual([1.5, 1.5])
  })

  it('[DC3] refuses a cell of no size, a place that is no number, no sample at all', () => {
    expect(() => cellWeights([{ along: 0, down: 0 }], 0)).toThrow(InputError)
    expect(() => cellWeights([{ along: Number.NaN, down: 0 }], 1)).toThrow(InputError)
    expect(() => polygonWeights([], [])).toThrow(InputError)
  })
})

describe('top cuts', () => {
  it('[TC1] tenths hold all the metal; even values are not top heavy, one giant is', () => {
    const even = topCutStudy(Array.from({ length: 40 }, (_, i) => 10 + i % 4))
    expect(even.tenths.reduce((s, t) => s + t.share, 0)).toBeCloseTo(1, 12)
    expect(even.topHeavy).toBe(false)
    const giant = topCutStudy([...Array.from({ length: 39 }, () => 1), 400])
    expect(giant.topHeavy).toBe(true)
    expect(giant.highest).toBeCloseTo(400 / 439, 12)
  })

  it('[TC2] a cut costs what it takes off, by hand', () => {
    const { cuts } = topCutStudy([1, 2, 3, 4, 5, 6, 7, 8, 9, 100])
    const nine = cuts.find(c => c.cut === 9)!
    expect(nine.kept).toBeCloseTo(54 / 145, 12)
    expect(nine.values).toBe(1)
  })

  it('[TC3] refuses one value, a negative one, and values without metal; all equal gives no cut', () => {
    expect(() => topCutStudy([1])).toThrow(InputError)
    expect(() => topCutStudy([1, -1])).toThrow(InputError)
    expect(() => topCutStudy([0, 0])).toThrow(InputError)
    expect(topCutStudy([2, 2, 2]).cuts).toEqual([])
  })
})
