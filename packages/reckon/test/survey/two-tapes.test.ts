import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Enu } from '../../src/core/index.ts'
import { twoTapes } from '../../src/survey/index.ts'

const far = (a: Enu, b: Enu): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])
const some = (from: number, to: number) => fc.double({ min: from, max: to, noNaN: true })

describe('two tapes', () => {
  it('[TT1] a mark that was taped exactly is found again, on its own hand (round trip)', () => {
    fc.assert(fc.property(some(-20, 20), some(0.5, 20), some(-2, 2), fc.constantFrom<-1 | 1>(-1, 1), some(-3, 3), (e, n, up, hand, rise) => {
      const a: Enu = [5, 7, 100], b: Enu = [17, 7, 100 + rise], mark: Enu = [5 + e, 7 - hand * n, 100 + up] // a to b runs east: right is south
      const [found] = twoTapes({ a, b, fromA: far(a, mark), fromB: far(b, mark), up: mark[2], turn: hand < 0 ? 'left' : 'right', sigma: 0.02 })
      expect(far(found!.point, mark)).toBeLessThan(1e-6)
    }))
  })

  it('[TT2] above and below lie in the upright plane through both stations', () => {
    const a: Enu = [0, 0, 0], b: Enu = [10, 0, 0]
    const [up] = twoTapes({ a, b, fromA: 5, fromB: Math.sqrt(9 + 49 - 0) - 0, turn: 'above', sigma: 0.02 })
    expect(up!.point[1]).toBe(0)
    expect(far(up!.point, a)).toBeCloseTo(5, 9)
    expect(up!.point[2]).toBeGreaterThan(0)
    const [down] = twoTapes({ a, b, fromA: 5, fromB: Math.sqrt(58), turn: 'below', sigma: 0.02 })
    expect(down!.point[2]).toBeCloseTo(-up!.point[2], 9)
  })

  it('[TT3] without a hand both places come back, mirrored at the line', () => {
    const [left, right] = twoTapes({ a: [0, 0, 0], b: [0, 10, 0], fromA: 5, fromB: Math.sqrt(3 * 3 + 6 * 6), sigma: 0.02 })
    expect(left!.point[0]).toBeCloseTo(-3, 9)
    expect(right!.point[0]).toBeCloseTo(3, 9)
  })

  it('[TT4] tapes that miss, stations plumb over one another, and no distance at all', () => {
    expect(twoTapes({ a: [0, 0, 0], b: [10, 0, 0], fromA: 2, fromB: 3, sigma: 0.02 })).toEqual([])
    expect(twoTapes({ a: [0, 0, 0], b: [10, 0, 0], fromA: 30, fromB: 3, sigma: 0.02 })).toEqual([])
    expect(twoTapes({ a: [0, 0, 0], b: [0, 0, 8], fromA: 5, fromB: 5, sigma: 0.02 })).toEqual([])
    expect(() => twoTapes({ a: [0, 0, 0], b: [1, 0, 0], fromA: 0, fromB: 1, sigma: 0.02 })).toThrow('fromA')
    expect(() => twoTapes({ a: [0, 0, 0], b: [1, 0, 0], fromA: Number.NaN, fromB: 1, sigma: 0.02 })).toThrow('fromA')
  })

  it('[TT5] the doubt is the scatter of marks taped again and again', () => {
    const a: Enu = [0, 0, 0], b: Enu = [10, 0, 0], sigma = 0.05, given = { a, b, fromA: 6, fromB: 7, turn: 'left' as const, sigma }
    const [{ point, sigma: said }] = twoTapes(given) as [ReturnType<typeof twoTapes>[number]]
    let state = 12345, east = 0, north = 0
    const uniform = () => { state = (state * 1103515245 + 12345) % 2147483648; return state / 2147483648 }
    const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())
    const n = 4000
    for (let i = 0; i < n; i++) {
      const p = twoTapes({ ...given, fromA: 6 + sigma * normal(), fromB: 7 + sigma * normal() })[0]!.point
      east += (p[0] - point[0]) ** 2 / n
      north += (p[1] - point[1]) ** 2 / n
    }
    expect(Math.sqrt(east) / said[0]).toBeGreaterThan(0.93)
    expect(Math.sqrt(east) / said[0]).toBeLessThan(1.07)
    expect(Math.sqrt(north) / said[1]).toBeGreaterThan(0.93)
    expect(Math.sqrt(north) / said[1]).toBeLessThan(1.07)
  })
})
