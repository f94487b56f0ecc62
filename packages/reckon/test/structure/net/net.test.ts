import { describe, expect, it } from 'vitest'
import { drawsFrom } from '../../../src/core/index.ts'
import { axesOf, equalArea, fromEqualArea, greatCircle, lineOf, meanPole, poleDensity, poleOf, smallCircle, vectorOf } from '../../../src/structure/index.ts'
import type { Line } from '../../../src/structure/index.ts'

const even = (seed: number, n: number): readonly Line[] => {
  const draws = drawsFrom(seed)
  return Array.from({ length: n }, () => lineOf([draws.normal(), draws.normal(), draws.normal()]))
}
const angle = (a: Line, b: Line) => Math.acos(Math.min(1, Math.abs(vectorOf(a).reduce((s, v, k) => s + v * vectorOf(b)[k]!, 0)))) * 180 / Math.PI

describe('the net', () => {
  it('[NE1] straight down is the middle, level lines are on the rim, 45 degrees of plunge 0.541 from the middle', () => {
    expect(equalArea({ trend: 10, plunge: 90 })[0]).toBeCloseTo(0, 12)
    expect(equalArea({ trend: 90, plunge: 0 })).toEqual([expect.closeTo(1, 12), expect.closeTo(0, 12)])
    // R: sqrt(2) sin(22.5) = 0.541196; on an equal-angle net it would be tan(22.5) = 0.414.
    expect(equalArea({ trend: 0, plunge: 45 })[1]).toBeCloseTo(0.541196, 6)
  })

  it('[NE2] and back; an upward line is drawn at its lower end', () => {
    for (const line of even(1, 50)) expect(angle(fromEqualArea(equalArea(line)), line)).toBeLessThan(1e-4)
    expect(angle(fromEqualArea(equalArea({ trend: 20, plunge: -30 })), { trend: 200, plunge: 30 })).toBeLessThan(1e-4)
    expect(() => fromEqualArea([1, 1])).toThrow('within the rim')
  })

  it('[NE3] equal areas stay equal: an even scatter falls evenly on the disc', () => {
    const inside = even(2, 20_000).map(line => Math.hypot(...equalArea(line)))
    for (const share of [0.25, 0.5, 0.75]) expect(Math.abs(inside.filter(r => r * r < share).length / 20_000 - share)).toBeLessThan(0.012)
  })

  it('[NE4] a great circle runs from strike to strike through the dip line, square to its pole', () => {
    const plane = { strike: 38, dip: 65 }, circle = greatCircle(plane)
    expect(Math.hypot(...circle[0]!)).toBeCloseTo(1, 9)
    expect(angle(fromEqualArea(circle[0]!), { trend: 38, plunge: 0 })).toBeLessThan(1e-4)
    expect(angle(fromEqualArea(circle[45]!), { trend: 128, plunge: 65 })).toBeLessThan(1e-4)
    for (const p of circle.slice(1, -1)) expect(angle(fromEqualArea(p), poleOf(plane))).toBeCloseTo(90, 4)
    expect(poleOf(plane).trend).toBeCloseTo(308, 9)
    expect(poleOf(plane).plunge).toBeCloseTo(25, 9)
  })

  it('[NE5] a cone keeps its angle all round and is cut in two where it passes the rim', () => {
    const about = { trend: 200, plunge: 60 }
    const whole = smallCircle(about, 10)
    expect(whole.length).toBe(1)
    for (const p of whole[0]!) expect(angle(fromEqualArea(p), about)).toBeCloseTo(10, 4)
    const near = smallCircle({ trend: 90, plunge: 3 }, 10)
    expect(near.length).toBeGreaterThan(1)
    for (const p of near.flat()) expect(angle(fromEqualArea(p), { trend: 90, plunge: 3 })).toBeCloseTo(10, 4)
  })
})

describe('density of poles', () => {
  it('[PD1] of an even scatter averages nothing, with one standard deviation about 1', () => {
    const all = Array.from({ length: 20 }, (_, i) => poleDensity(even(10 + i, 100), 15)).flatMap(d => d.values.filter(Number.isFinite))
    const mean = all.reduce((s, v) => s + v, 0) / all.length
    expect(Math.abs(mean)).toBeLessThan(0.15)
    expect(Math.sqrt(all.reduce((s, v) => s + (v - mean) ** 2, 0) / all.length)).toBeGreaterThan(0.8)
    expect(Math.sqrt(all.reduce((s, v) => s + (v - mean) ** 2, 0) / all.length)).toBeLessThan(1.2)
  })

  it('[PD2] agrees with its average and variance worked out by brute force', () => {
    const n = 60, draws = drawsFrom(5), { sharpness } = poleDensity(even(1, n), 5)
    expect(sharpness).toBeCloseTo(2 * (1 + n / 9), 12)
    const weights = Array.from({ length: 200_000 }, () => Math.exp(sharpness * (draws.uniform() - 1))) // |cos| is even for an even scatter
    const mean = weights.reduce((s, w) => s + w, 0) / weights.length
    const variance = weights.reduce((s, w) => s + (w - mean) ** 2, 0) / weights.length
    expect(n * mean / Math.sqrt(n * variance)).toBeCloseTo(3, 1) // Kamb's rule
  })

  it('[PD3] of a cluster stands highest at the cluster, on either end of its lines and across the rim', () => {
    for (const middle of [{ trend: 308, plunge: 25 }, { trend: 90, plunge: 1 }]) {
      const draws = drawsFrom(9), axis = vectorOf(middle)
      const about = (end: number) => axis.map(v => end * (v + 0.08 * draws.normal())) as unknown as [number, number, number]
      const lines = Array.from({ length: 30 }, (_, i) => lineOf(about(i % 2 ? 1 : -1)))
      const { size, values, most } = poleDensity(lines)
      expect(most).toBeGreaterThan(10)
      const k = values.reduce((best, v, i) => v > (values[best] ?? -Infinity) || !Number.isFinite(values[best]!) ? i : best, 0)
      const [x, y] = [2 * (k % size) / (size - 1) - 1, 2 * Math.floor(k / size) / (size - 1) - 1], r = Math.max(1, Math.hypot(x, y))
      expect(angle(fromEqualArea([x / r, y / r]), middle)).toBeLessThan(8)
    }
  })

  it('[PD4] refuses none, takes one', () => {
    expect(() => poleDensity([])).toThrow('too few')
    expect(poleDensity([{ trend: 0, plunge: 90 }]).most).toBeGreaterThan(1)
  })
})

describe('mean of poles', () => {
  it('[MP1] V: set B2 of Fisher, Lewis and Embleton, half of it turned end for end, still means 144.2/57.2 with a cone of 2.7', () => {
    const dec = [
      122.5, 130.5, 132.5, 148.5, 140.0, 133.0, 157.5, 153.0, 140.0, 147.5, 142.0, 163.5, 141.0,
      156.0, 139.5, 153.5, 151.5, 147.5, 141.0, 143.5, 131.5, 147.5, 147.0, 149.0, 144.0, 139.5,
    ]
    const inc = [
      55.5, 58.0, 44.0, 56.0, 63.0, 64.5, 53.0, 44.5, 61.5, 54.5, 51.0, 56.0, 59.5,
      56.5, 54.0, 47.5, 61.0, 58.5, 57.0, 67.5, 62.5, 63.5, 55.5, 62.0, 53.5, 58.0,
    ]
    const found = meanPole(dec.map((trend, i) => i % 2 ? { trend, plunge: inc[i]! } : { trend: (trend + 180) % 360, plunge: -inc[i]! }))
    expect(found.trend).toBeCloseTo(144.2, 1)
    expect(found.plunge).toBeCloseTo(57.2, 1)
    expect(found.alpha95).toBeCloseTo(2.7, 1)
    expect(Math.abs(found.kappa - 109)).toBeLessThan(0.5)
  })

  it('[MP2] poles either side of the rim do not cancel out', () => {
    const found = meanPole([80, 85, 88, 86].flatMap((dip, i) => [poleOf({ strike: 10 + i, dip }), poleOf({ strike: 190 + i, dip })]))
    expect(angle(found, lineOf(axesOf({ strike: 11.5, dip: 90 }).normal))).toBeLessThan(3)
    expect(() => meanPole([{ trend: 1, plunge: 1 }])).toThrow('too few')
  })
})
