import { describe, expect, it } from 'vitest'
import { choleskyInPlace, drawsFrom } from '../../../src/core/index.ts'
import { certaintyWorth, lookBatch, lookWorth, normalBelow, worthNow } from '../../../src/pay/index.ts'
import type { CandidateLook, GroundChoice } from '../../../src/pay/index.ts'

/** Three blocks whose logs move together, two options and walking away. */
const sd = [0.5, 0.6, 0.7], rho = [[1, 0.6, 0.2], [0.6, 1, 0.3], [0.2, 0.3, 1]]
const covariance = rho.map((row, i) => row.map((r, j) => r * sd[i]! * sd[j]!))
const choice: GroundChoice = {
  expected: Float64Array.of(3, 2, 4),
  options: [
    { fixed: -5000, weights: Float64Array.of(1000, 1000, 0) }, { fixed: -4100, weights: Float64Array.of(0, 0, 1000) },
    { fixed: 0, weights: Float64Array.of(0, 0, 0) },
  ],
}
const noise = [0.3, 0.4, 0.2]
const lookAt = (i: number): CandidateLook => ({
  cost: 1, covariance: Float64Array.from(covariance[i]!), variance: covariance[i]![i]! + noise[i]!,
  withOthers: Float64Array.from([0, 1, 2], j => covariance[i]![j]! + (i === j ? noise[i]! : 0)),
})

/**
 * Nested Monte Carlo by brute force: outer, a reading of each look is drawn with the ground; inner, the ground is drawn many times, each draw
 * weighed by how well it fits the readings. Nothing of the closed form is used.
 */
function nested(looks: readonly number[], outer: number, inner: number): number {
  const draws = drawsFrom(5), factor = Float64Array.from(covariance.flat())
  choleskyInPlace(factor, 3)
  const ground = () => {
    const z = [draws.normal(), draws.normal(), draws.normal()]
    return [0, 1, 2].map((i) => { let sum = 0; for (let j = 0; j <= i; j++) sum += factor[i * 3 + j]! * z[j]!; return sum })
  }
  const values = (log: readonly number[]) => Float64Array.from(log, (x, i) => choice.expected[i]! * Math.exp(x - covariance[i]![i]! / 2))
  const sample = Array.from({ length: inner }, ground), held = sample.map(values)
  let informed = 0
  for (let k = 0; k < outer; k++) {
    const truth = sample[Math.floor(draws.uniform() * inner)]!
    const readings = looks.map(i => truth[i]! + Math.sqrt(noise[i]!) * draws.normal())
    const mean = new Float64Array(3)
    let total = 0
    sample.forEach((log, s) => {
      const weight = Math.exp(-looks.reduce((sum, i, n) => sum + (readings[n]! - log[i]!) ** 2 / noise[i]!, 0) / 2)
      total += weight
      for (let p = 0; p < 3; p++) mean[p]! += weight * held[s]![p]!
    })
    informed += worthNow({ ...choice, expected: mean.map(m => m / total) })
  }
  return informed / outer - worthNow(choice)
}

describe('what a look is worth', () => {
  // 3,000 readings, 3,000 grounds: the worth itself is good to some 25 of money (standard error), so 80 are allowed.
  it.each([0, 1, 2])('agrees with nested Monte Carlo, look %d', (i) => {
    expect(Math.abs(lookWorth(choice, lookAt(i)) - nested([i], 3000, 3000))).toBeLessThan(80)
  })
  // R: one straight line against nothing: s UNLI(|m|/s) with a nearly straight exponential; UNLI(0) = 0.398942, UNLI(1) = 0.083315 (M tables, checks 8.7).
  it.each([[0, 0.398942], [1, 0.083315]])('is the unit normal loss when logs hardly vary, %d deviations from even', (away, loss) => {
    const small = 1e-4, weight = 1e6, s = weight * small
    const options = [{ fixed: -weight - away * s, weights: Float64Array.of(weight) }, { fixed: 0, weights: Float64Array.of(0) }]
    const line: GroundChoice = { expected: Float64Array.of(1), options }
    expect(lookWorth(line, { covariance: Float64Array.of(small ** 2), variance: small ** 2 }) / s).toBeCloseTo(loss, 3)
  })
  it('is nothing when the look tells nothing, or there is one option', () => {
    expect(lookWorth(choice, { covariance: new Float64Array(3), variance: 1 })).toBeCloseTo(0, 9)
    expect(lookWorth({ ...choice, options: choice.options.slice(0, 1) }, lookAt(0))).toBeLessThan(1)
  })
  it('falls as the look errs more, and never passes certainty', () => {
    const worth = [0, 0.3, 1, 5].map(error => lookWorth(choice, { ...lookAt(0), variance: covariance[0]![0]! + error }))
    expect([...worth].sort((a, b) => b - a)).toEqual(worth)
    const draws = drawsFrom(8), factor = Float64Array.from(covariance.flat())
    choleskyInPlace(factor, 3)
    const outcomes = Array.from({ length: 4000 }, () => {
      const z = [draws.normal(), draws.normal(), draws.normal()]
      const log = (i: number) => [0, 1, 2].reduce((sum, j) => j <= i ? sum + factor[i * 3 + j]! * z[j]! : sum, 0)
      return Float64Array.from([0, 1, 2], i => choice.expected[i]! * Math.exp(log(i) - covariance[i]![i]! / 2))
    })
    expect(worth[0]).toBeLessThan(certaintyWorth(choice, outcomes))
  })
})

describe('looks taken together', () => {
  it('what two are worth agrees with nested Monte Carlo', () => {
    const steps = lookBatch(choice, [0, 1, 2].map(lookAt), { most: 2, worthIt: false })
    const both = steps.reduce((sum, s) => sum + s.adds, 0)
    // 256 cases: some 6 % of the options' spread.
    expect(Math.abs(both - nested(steps.map(s => s.look), 3000, 3000))).toBeLessThan(160)
  })
  it('a second look at a place that one look has told all of adds nothing', () => {
    const sure = { ...lookAt(0), variance: covariance[0]![0]!, withOthers: Float64Array.of(covariance[0]![0]!, covariance[0]![0]!) }
    expect(lookBatch(choice, [sure, sure], { most: 2, worthIt: false })).toHaveLength(1)
  })
  it('stops when nothing is worth its cost', () => {
    expect(lookBatch(choice, [{ ...lookAt(0), cost: 1e9 }], { most: 3, worthIt: true })).toEqual([])
    expect(lookBatch(choice, [], { most: 3, worthIt: true })).toEqual([])
  })
})

it('the normal distribution function is good to seven places', () => {
  // V: 0.8413447, 0.9772499 (any table of the normal distribution)
  expect(normalBelow(1)).toBeCloseTo(0.8413447, 6)
  expect(normalBelow(-2)).toBeCloseTo(1 - 0.9772499, 6)
  expect(normalBelow(0)).toBeCloseTo(0.5, 7)
})
