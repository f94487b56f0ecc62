import { describe, expect, it } from 'vitest'
import { drawsFrom } from '../../../src/core/index.ts'
import { smoothAlong } from '../../../src/structure/index.ts'

const taped = (seed: number, width: (at: number) => number, n = 50) => {
  const draws = drawsFrom(seed)
  return Array.from({ length: n }, () => { const at = 80 * draws.uniform(); return { at, width: Math.max(0, width(at) + 0.05 * draws.normal()), sigma: 0.02 } })
}

describe('a running mean of widths along a vein', () => {
  it('[SA1] finds a swell where it is and how large', () => {
    for (let seed = 1; seed <= 10; seed++) {
      const found = smoothAlong(taped(seed, at => 0.4 + 0.4 * Math.exp(-(((at - 50) / 8) ** 2))))
      const top = found.points.reduce((a, b) => b.mean > a.mean ? b : a)
      expect(Math.abs(top.at - 50)).toBeLessThan(5)
      expect(Math.abs(top.mean - 0.8)).toBeLessThan(0.12)
      expect(Math.abs(found.points[5]!.mean - 0.4)).toBeLessThan(0.1)
    }
  })

  it('[SA2] stays with the plain mean where there is only scatter, most of the time', () => {
    const plain = Array.from({ length: 40 }, (_, i) => smoothAlong(taped(100 + i, () => 0.4))).filter(s => s.reach === Infinity)
    expect(plain.length).toBeGreaterThanOrEqual(30)
  })

  it('[SA3] its 80 % band holds the true width about that often', () => {
    const truth = (at: number) => 0.4 + 0.15 * Math.sin(at / 12)
    const held = Array.from({ length: 60 }, (_, i) => {
      const { points } = smoothAlong(taped(300 + i, truth))
      const p = points[20 + i % 40]!
      return Math.abs(p.mean - truth(p.at)) <= 1.2816 * p.sigma
    }).filter(Boolean).length
    expect(held / 60).toBeGreaterThan(0.6)
    expect(held / 60).toBeLessThanOrEqual(1)
  })

  it('[SA4] does not hang on order or place, and scales with the unit', () => {
    const widths = taped(7, at => 0.3 + at / 200)
    const a = smoothAlong(widths), b = smoothAlong([...widths].reverse().map(w => ({ at: w.at + 1000, width: w.width * 3, sigma: w.sigma * 3 })))
    expect(b.reach).toBeCloseTo(a.reach, 9)
    a.points.forEach((p, i) => { expect(b.points[i]!.mean).toBeCloseTo(3 * p.mean, 8) })
  })

  it('[SA5] takes one width, equal ones and all at one place; refuses none and nonsense', () => {
    expect(smoothAlong([{ at: 2, width: 0.4, sigma: 0 }]).points).toEqual([{ at: 2, mean: 0.4, sigma: 0 }])
    const same = smoothAlong(Array.from({ length: 10 }, (_, i) => ({ at: i, width: 0.5, sigma: 0 })))
    expect(same.overall).toBeCloseTo(0.5, 12)
    expect(smoothAlong(Array.from({ length: 10 }, (_, i) => ({ at: 4, width: i / 10, sigma: 0.01 }))).points.length).toBe(1)
    expect(() => smoothAlong([])).toThrow('too few')
    expect(() => smoothAlong([{ at: Number.NaN, width: 1, sigma: 0 }])).toThrow('widths[0].at')
    expect(() => smoothAlong([{ at: 1, width: -1, sigma: 0 }])).toThrow('widths[0].width')
  })
})
