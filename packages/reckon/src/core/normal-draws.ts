import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'

/** A stream of numbers from a stated seed: the same seed gives the same numbers on every machine. */
export interface Draws {
  /** Uniform in [0, 1). */
  uniform(): number
  /** Standard normal, by Box and Muller's pairs (Ann. Math. Statist. 29, 1958, 610). */
  normal(): number
}

/** Spreads neighbouring seeds over all 32 bits (the finaliser of MurmurHash3). */
function spread(seed: number): number {
  let h = seed | 0
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return h ^ (h >>> 16)
}

export function drawsFrom(seed: number): Draws {
  const generator = xoroshiro128plus(spread(seed))
  // The generator fills half its state with the seed as given, so that its first numbers are nearly the same for every seed.
  for (let i = 0; i < 32; i++) uniformFloat64(generator)
  let spare: number | undefined
  const uniform = () => uniformFloat64(generator)
  return {
    uniform,
    normal() {
      if (spare !== undefined) { const kept = spare; spare = undefined; return kept }
      const radius = Math.sqrt(-2 * Math.log(1 - uniform()))
      const angle = 2 * Math.PI * uniform()
      spare = radius * Math.sin(angle)
      return radius * Math.cos(angle)
    },
  }
}
