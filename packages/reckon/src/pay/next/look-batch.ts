import { drawsFrom } from '../../core/index.ts'
import type { GroundChoice, Look } from './look-worth.ts'
import { worthNow } from './look-worth.ts'

/** A look that could be taken, with how it moves with every other one. */
export interface CandidateLook extends Look {
  /** What it costs, money. */
  readonly cost: number
  /** Covariance of its reading with that of each candidate, itself among them (then its variance). */
  readonly withOthers: Float64Array
}

export interface BatchStep {
  /** The candidate's place in the list. */
  readonly look: number
  /** What it adds to the choice, given those before it. */
  readonly adds: number
}

export interface BatchOptions {
  readonly most: number
  /** Stops when the next look adds less than its cost; false goes on to `most`. */
  readonly worthIt: boolean
  readonly seed?: number
}

const scenarios = 256
const quarters = 16

/** The middles of equally likely slices of a standard normal, by bisection on its distribution through the complementary error series. */
function sliceMiddles(count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => {
    let [low, high] = [-6, 6]
    const p = (i + 0.5) / count
    for (let k = 0; k < 60; k++) {
      const z = (low + high) / 2
      if (normalBelow(z) < p) low = z; else high = z
    }
    return (low + high) / 2
  })
}

/** Normal distribution function, by the rational form of Abramowitz and Stegun 26.2.17; error below 7.5e-8. */
export function normalBelow(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z))
  const tail = Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI) * t * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))))
  return z >= 0 ? 1 - tail : tail
}

/**
 * Looks taken together before anything is decided: the best first, then the one that adds most given the first, and so on, while one adds more than it costs.
 *
 * Greedy. The readings of the looks already taken are drawn (256 cases, stated seed); the next look's reading is averaged over 16 equally likely slices.
 * After each look every covariance is conditioned on it (C − c cᵀ / v).
 */
export function lookBatch(choice: GroundChoice, candidates: readonly CandidateLook[], { most, worthIt, seed = 1913 }: BatchOptions): readonly BatchStep[] {
  const blocks = choice.expected.length
  const draws = drawsFrom(seed)
  const slices = sliceMiddles(quarters)
  const values = Array.from({ length: scenarios }, () => Float64Array.from(choice.expected))
  const covariance = candidates.map(c => Float64Array.from(c.covariance))
  const between = candidates.map(c => Float64Array.from(c.withOthers))
  const taken = new Set<number>()
  const steps: BatchStep[] = []
  const one = new Float64Array(blocks)
  while (steps.length < most) {
    const now = values.reduce((sum, v) => sum + worthNow({ ...choice, expected: v }), 0) / scenarios
    let best: { look: number, adds: number, net: number } | undefined
    candidates.forEach((candidate, c) => {
      const variance = between[c]![c]!
      if (taken.has(c) || !(variance > 1e-12 * candidate.variance)) return
      const b = covariance[c]!.map(x => x / Math.sqrt(variance))
      const lift = Array.from(slices, u => b.map(x => Math.exp(x * u - x * x / 2)))
      // Slices miss a little of the tails: each block's factors are scaled to average one.
      for (let p = 0; p < blocks; p++) { const m = lift.reduce((sum, l) => sum + l[p]!, 0) / quarters; for (const l of lift) l[p]! /= m }
      let informed = 0
      for (const v of values) {
        for (const l of lift) {
          for (let p = 0; p < blocks; p++) one[p] = v[p]! * l[p]!
          informed += worthNow({ ...choice, expected: one })
        }
      }
      const adds = Math.max(0, informed / scenarios / quarters - now)
      if (!best || adds - candidate.cost > best.net) best = { look: c, adds, net: adds - candidate.cost }
    })
    if (!best || (worthIt && best.net <= 0)) break
    const { look, adds } = best
    steps.push({ look, adds })
    taken.add(look)
    const c = covariance[look]!, w = between[look]!, variance = w[look]!
    for (const v of values) {
      const u = draws.normal()
      for (let p = 0; p < blocks; p++) { const b = c[p]! / Math.sqrt(variance); v[p]! *= Math.exp(b * u - b * b / 2) }
    }
    // The drawn cases are made to average what is expected, so that luck is not taken for worth.
    for (let p = 0; p < blocks; p++) {
      const m = values.reduce((sum, v) => sum + v[p]!, 0) / scenarios
      if (m > 0) for (const v of values) v[p]! *= choice.expected[p]! / m
    }
    const [wasC, wasW] = [Float64Array.from(c), Float64Array.from(w)]
    candidates.forEach((_, i) => {
      const share = wasW[i]! / variance
      for (let p = 0; p < blocks; p++) covariance[i]![p]! -= share * wasC[p]!
      for (let j = 0; j < candidates.length; j++) between[i]![j]! -= share * wasW[j]!
    })
  }
  return steps
}
