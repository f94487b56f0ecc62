import { describe, expect, it } from 'vitest'
import { drawsFrom } from '../../src/core/index.ts'
import { changedOver, changedOverLimit } from '../../src/estimate/index.ts'
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

/** Solves a small symmetric system by elimination. */
function solved(k: number[][], right: number[]): number[] {
  const n = right.length
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const f = k[j]![i]! / k[i]![i]!
      for (let m = i; m < n; m++) k[j]![m]! -= f * k[i]![m]!
      right[j]! -= f * right[i]!
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let m = i + 1; m < n; m++) right[i]! -= k[i]![m]! * right[m]!
    right[i]! /= k[i]![i]!
  }
  return right
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

  it('[CO5] about as many honest books exceed the limit as it says, and a stricter one is higher', () => {
    const limitAt = (share: number) => changedOverLimit(samples, node, drawsFrom(3), { share, books: 400 }), limit = limitAt(0.2), strict = limitAt(0.05)
    expect(strict).toBeGreaterThan(limit)
    const other = drawsFrom(99), books = 300
    // The same law drawn another way: each value on those before it, by conditional means.
    const over = Array.from({ length: books }, () => {
      const values: number[] = []
      samples.forEach((s, i) => {
        const k = (a: number, b: number) => a === b ? node.variance + samples[a]!.errorVariance
          : 0.8 * node.variance * Math.exp(-Math.hypot(samples[a]!.at.along - samples[b]!.at.along, samples[a]!.at.down - samples[b]!.at.down) / node.range)
        const weights = solved(Array.from({ length: i }, (_, a) => Array.from({ length: i }, (__, b) => k(a, b))), Array.from({ length: i }, (_, a) => k(a, i)))
        const mean = weights.reduce((sum, w, a) => sum + w * values[a]!, 0), variance = k(i, i) - weights.reduce((sum, w, a) => sum + w * k(a, i), 0)
        values.push(mean + Math.sqrt(variance) * other.normal())
        expect(s.errorVariance).toBeGreaterThan(0)
      })
      return (changedOver(samples.map((s, i) => ({ ...s, logValue: values[i]! })), { node })[0]?.logRatio ?? 0) > limit
    }).filter(Boolean).length / books
    // 300 books at 20 %: one standard deviation 2.3 %, and as much again from the 400 that set the limit.
    expect(Math.abs(over - 0.2)).toBeLessThan(0.09)
  })

  it('[CO6] the limit refuses shares and numbers of books that can tell nothing', () => {
    for (const share of [0, 1, Number.NaN]) expect(() => changedOverLimit(samples, node, drawsFrom(1), { share, books: 100 })).toThrow('share')
    for (const books of [19, 100.5]) expect(() => changedOverLimit(samples, node, drawsFrom(1), { share: 0.05, books })).toThrow('books')
    expect(changedOverLimit(samples.slice(0, 2), node, drawsFrom(1), { share: 0.05, books: 100 })).toBe(Infinity)
  })

  it('[CO4] fewer than three say nothing; means must be as many as samples', () => {
    expect(changedOver(samples.slice(0, 2), { node })).toEqual([])
    expect(() => changedOver(samples, { node, means: [1] })).toThrow('means')
  })
})
