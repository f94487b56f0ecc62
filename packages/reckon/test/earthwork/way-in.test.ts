import { describe, expect, it } from 'vitest'
import { drawsFrom } from '../../src/core/index.ts'
import { openUp, wayIn, type Cut, type WayStation } from '../../src/earthwork/index.ts'

const at = (d: number, sill: number, back: number, width = 1.2): WayStation => ({ at: d, sill, back, width })

describe('the way in', () => {
  const way = [at(0, 0, 1.3), at(5, 0.1, 1.9), at(10, -0.1, 1.8, 0.9), at(15, 0.2, 2)]
  it('names the low, the narrow and the steep place', () => {
    const { lowest, narrowest, steepest, length, fall } = wayIn(way)
    expect(lowest).toEqual({ at: 0, headRoom: 1.3 })
    expect(narrowest).toEqual({ at: 10, width: 0.9 })
    expect(steepest).toEqual({ from: 10, to: 15, grade: expect.closeTo(0.06, 12) as number })
    expect([length, fall]).toEqual([15, expect.closeTo(0.2 / 15, 12)])
  })
  it('water stands behind a rise up to its height', () => {
    expect(wayIn(way).ponds).toEqual([{ from: 5, to: expect.closeTo(10 + 5 * 0.2 / 0.3, 12) as number, depth: expect.closeTo(0.2, 12) as number }])
    expect(wayIn([at(0, 0, 2), at(5, 0.1, 2)]).ponds).toEqual([])
    expect(wayIn([at(0, 0, 2), at(5, -0.4, 2), at(9, -0.2, 2)]).ponds).toEqual([{ from: 0, to: 9, depth: 0.4 }])
  })
  it('refuses a back below its sill, one place, and places out of order', () => {
    expect(() => wayIn([at(0, 1, 0), at(1, 0, 2)])).toThrow(/stations\[0\]\.back/)
    expect(() => wayIn([at(0, 0, 1)])).toThrow(/stations/)
    expect(() => wayIn([at(0, 0, 1), at(0, 0, 1)])).toThrow(/stations\[1\]\.at/)
  })
})

describe('opening up', () => {
  it('a brow over an even drift is a wedge: w x² / (2 taper)', () => {
    const { bank, runs, way } = openUp([at(0, 0, 1.4), at(20, 0, 1.4)], 'brow', 0.5, 0.5)
    expect([bank, runs]).toEqual([expect.closeTo(1.2 * 0.25 / (2 * 0.5), 12), 1])
    expect(way[0]!.back).toBeCloseTo(1.9, 12)
    expect(way[1]).toMatchObject({ at: 1, back: 1.4 })
  })
  it('a sill lowered with a fall of 1 in 50 runs in fifty times its depth on a level drift', () => {
    const { bank, runs } = openUp([at(0, 0, 1.4), at(40, 0, 1.4)], 'sill', 0.3, 0.02)
    expect([bank, runs]).toEqual([expect.closeTo(1.2 * 0.09 / 0.04, 12), expect.closeTo(15, 12)])
  })
  it('ribs drawn back take the height of the way with them', () => {
    expect(openUp([at(0, 0, 1.5), at(9, 0, 1.5)], 'ribs', 0.6, 0.3).bank).toBeCloseTo(1.5 * 0.6 * 2 / 2, 12)
  })
  it('nothing cut changes nothing; what is already higher inside ends the cut', () => {
    const way = [at(0, 0, 1.3), at(2, 0, 2.4), at(9, 0, 1.3)]
    expect(openUp(way, 'brow', 0, 0.5)).toEqual({ bank: 0, runs: 0, way })
    const { runs, way: after } = openUp(way, 'brow', 0.6, 0.1)
    expect(runs).toBeLessThan(2)
    expect(after.at(-1)).toEqual(way.at(-1))
  })
  it.each<Cut>(['brow', 'sill', 'ribs'])('%s: what is cut is what the two ways differ by (brute force)', (cut) => {
    const draws = drawsFrom(31)
    for (let trial = 0; trial < 30; trial++) {
      const way = Array.from({ length: 6 }, (_, i) => at(i * 2, 0.1 * draws.uniform(), 1.3 + 0.5 * draws.uniform(), 1 + 0.4 * draws.uniform()))
      const { bank, way: after } = openUp(way, cut, 0.4, 0.05), n = 4000
      const value = (stations: readonly WayStation[], d: number, of: (s: WayStation) => number) => {
        const i = Math.max(1, stations.findIndex(s => s.at >= d)), [a, b] = [stations[i - 1]!, stations[i]!]
        return of(a) + (of(b) - of(a)) * (d - a.at) / (b.at - a.at)
      }
      let sum = 0
      for (let i = 0; i < n; i++) {
        const d = (i + 0.5) * 10 / n
        const more = (of: (s: WayStation) => number) => Math.abs(value(after, d, of) - value(way, d, of))
        sum += (cut === 'ribs' ? more(s => s.width) * value(way, d, s => s.back - s.sill) : more(s => cut === 'brow' ? s.back : s.sill) * value(way, d, s => s.width)) * 10 / n
      }
      expect(Math.abs(bank - sum)).toBeLessThan(2e-4)
    }
  })
})
