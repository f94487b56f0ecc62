import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'

/** A source of numbers that gives the same ones for the same seed and stream. Each call moves it on. */
export interface Random {
  /** In [low, high); [0, 1) when nothing is said. */
  uniform(low?: number, high?: number): number
  /** A whole number in [low, high], both ends included. */
  whole(low: number, high: number): number
  normal(mean?: number, deviation?: number): number
  /** Lognormal with the stated median and standard deviation of its logarithm. */
  lognormal(median: number, logDeviation: number): number
  poisson(mean: number): number
  binomial(count: number, chance: number): number
  chance(probability: number): boolean
  pick<T>(of: readonly T[]): T
  /** One of `of` with chances in proportion to the weights. */
  weighted<T>(of: readonly (readonly [T, number])[]): T
  shuffle<T>(of: readonly T[]): T[]
}

/** From this mean or count on, counts are drawn from the normal law, rounded: the skewness left out is then below 0.13. */
const manyCounts = 60

/**
 * Makes a source of numbers. Streams with different names are independent, so that a change to one part of the mine
 * leaves the numbers of every other part as they were.
 */
export function random(seed: number, stream: string): Random {
  const generator = xoroshiro128plus(hash(`${seed}/${stream}`))
  const uniform = (low = 0, high = 1) => low + (high - low) * uniformFloat64(generator)
  const normal = (mean = 0, deviation = 1) => mean + deviation * Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())
  const whole = (low: number, high: number) => low + Math.floor(uniform() * (high - low + 1))
  const chance = (probability: number) => uniform() < probability

  function poisson(mean: number): number {
    if (mean >= manyCounts) return Math.max(0, Math.round(normal(mean, Math.sqrt(mean))))
    let count = 0
    for (let left = uniform(), term = Math.exp(-mean); left >= term && term > 0; term *= mean / count) { left -= term; count++ }
    return count
  }
  function binomial(count: number, probability: number): number {
    const mean = count * probability
    if (mean >= manyCounts && count - mean >= manyCounts) {
      return Math.min(count, Math.max(0, Math.round(normal(mean, Math.sqrt(mean * (1 - probability))))))
    }
    let hits = 0
    for (let i = 0; i < count; i++) if (chance(probability)) hits++
    return hits
  }
  function weighted<T>(of: readonly (readonly [T, number])[]): T {
    let left = uniform(0, of.reduce((sum, [, weight]) => sum + weight, 0))
    for (const [item, weight] of of) { left -= weight; if (left < 0) return item }
    return of.at(-1)![0]
  }
  function shuffle<T>(of: readonly T[]): T[] {
    const out = [...of]
    for (let i = out.length - 1; i > 0; i--) { const j = whole(0, i); [out[i], out[j]] = [out[j]!, out[i]!] }
    return out
  }
  return {
    uniform, normal, whole, chance, poisson, binomial, weighted, shuffle,
    lognormal: (median, logDeviation) => median * Math.exp(logDeviation * normal()),
    pick: of => of[whole(0, of.length - 1)]!,
  }
}

/** FNV-1a, 32 bits. */
function hash(text: string): number {
  let h = 0x811c9dc5
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193)
  return h | 0
}
