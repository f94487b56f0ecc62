import { describe, expect, it } from 'vitest'
import { drawsFrom } from '../../src/core/index.ts'
import { changedOver } from '../../src/estimate/index.ts'
import type { LogSample } from '../../src/estimate/index.ts'

const node = { variance: 1.1, nuggetShare: 0.2, range: 4 }
const draws = drawsFrom(5)
const samples: readonly LogSample[] = Array.from({ length: 9 }, (_, i) => ({
  at: { along: 1.7 * i, down: 3 * draws.uniform() }, logValue: 2 + draws.normal(), errorVariance: 0.05 + 0.3 * draws.uniform(),
}))

/** ln density of all samples at once, by elimination. */
function logDensity(of: readonly LogSample[], means: readonly number[]): number {
  const n = of.length, k = of.map((a, i) => of.map((b, j) =>
    i === j ? node.variance + a.errorVariance : 0.8 * node.variance * Math.exp(-Math.hypot(a.at.along - b.at.along, a.at.down - b.at.down) / node.range)))
  const r = of.map((s, i) => s.logValue - means[i]!)
  let sum = 0
  for (let i = 0; i < n; i++) {
    sum -= (Math.log(k[i]![i]!) + r[i]! ** 2 / k[i]![i]!) / 2
    for (let j = i + 1; j < n; j++) {
      const f = k[j]![i]! / k[i]![i]!
      r[j]! -= f * r[i]!
      for (let m = i; m < n; m++) k[j]![m]! -= f * k[i]![m]!
    }
  }
  return sum
}

describe('bags that were changed over', () => {
  it('[CO1] the ratio of each pair is that of the whole set as it lies and with the two changed over (brute force)', () => {
    const means = samples.map((_, i) => 1.5 + 0.1 * i), found = changedOver(samples, { node, means })
    const brute = samples.flatMap((a, i) => samples.slice(0, i).flatMap((b, j) => {
      const over = samples.map((s, m) => m === i ? { ...b, at: a.at } : m === j ? { ...a, at: b.at } : s)
      const logRatio = logDensity(over, means) - logDensity(samples, means)
      return logRatio > 0 ? [{ a: i, b: j, logRatio }] : []
    })).sort((x, y) => y.logRatio - x.logRatio)
    expect(brute.length).toBeGreaterThan(3)
    expect(found.map(({ a, b }) => [a, b])).toEqual(brute.map(({ a, b }) => [a, b]))
    found.forEach((one, i) => expect(one.logRatio).toBeCloseTo(brute[i]!.logRatio, 9))
  })

  it('[CO2] without means one common mean is taken: adding to all values changes nothing', () => {
    const plain = changedOver(samples, { node }), raised = changedOver(samples.map(s => ({ ...s, logValue: s.logValue + 40 })), { node })
    expect(raised).toHaveLength(plain.length)
    raised.forEach((one, i) => expect(one.logRatio).toBeCloseTo(plain[i]!.logRatio, 7))
  })

  it('[CO3] two sure bags on a smooth trend that were changed over stand first', () => {
    const even = Array.from({ length: 12 }, (_, i): LogSample => ({ at: { along: i, down: 0 }, logValue: Math.sin(i / 2.5), errorVariance: 0.001 }))
    const swapped = even.map((s, i) => i === 4 ? { ...s, logValue: even[11]!.logValue } : i === 11 ? { ...s, logValue: even[4]!.logValue } : s)
    const [top] = changedOver(swapped, { node: { variance: 0.5, nuggetShare: 0.02, range: 8 } })
    expect([top!.a, top!.b]).toEqual([11, 4])
    expect(top!.logRatio).toBeGreaterThan(5)
  })

  it('[CO4] fewer than three say nothing; means must be as many as samples', () => {
    expect(changedOver(samples.slice(0, 2), { node })).toEqual([])
    expect(() => changedOver(samples, { node, means: [1] })).toThrow('means')
  })
})
