import { drawsFrom } from '../../core/index.ts'
import type { Draws } from '../../core/index.ts'

/** The golden ratio's share of 2^32, odd: keeps the streams of neighbouring seeds apart. */
const STRIDE = 0x9e3779b1

/** A stream of draws for realisation r (from 0) of a seed; -1 for the path. It depends on nothing else. */
export function streamOf(seed: number, r: number): Draws {
  // Both halves of a seed beyond 32 bits count.
  const folded = Math.imul(seed % 0x100000000 | 0, STRIDE) ^ Math.imul(Math.floor(seed / 0x100000000) | 0, 0x85ebca6b)
  return drawsFrom(folded + r | 0)
}
