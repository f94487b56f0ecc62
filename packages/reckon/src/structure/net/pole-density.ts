import { DegenerateError } from '../../core/index.ts'
import { checkedLine, vectorOf } from '../line.ts'
import type { Line } from '../line.ts'
import { dot } from '../vector.ts'
import { fromEqualArea } from './equal-area.ts'

/** How thick lines lie on the net, on a square of `size` times `size` places from west to east, then from south to north. */
export interface PoleDensity {
  readonly size: number
  /** Standard deviations above an even scatter of as many lines; NaN outside the rim. */
  readonly values: readonly number[]
  readonly most: number
  /** Sharpness of the counting: weight exp(sharpness (cos - 1)) for a line so far away. */
  readonly sharpness: number
}

const kamb = 3 // standard deviations that an even scatter's own count is to be: how wide one counts

/**
 * Density of lines without a sense, by Kamb's rule with a smooth counter.
 *
 * Around each place lines are counted with weight exp(f (|cos| - 1)). Scattered evenly, n lines give on average n (1 - exp(-f)) / f, with a variance of
 * n times that of one weight; f is chosen so that this average is three of its standard deviations, f = 2 (1 + n / 9). Told is by how many
 * standard deviations the count stands above the average: 3 and more is a cluster, not chance.
 * @throws DegenerateError("too few"); InputError
 * Source: Kamb, J. Geophys. Res. 64, 1959, 1891; the smooth counter: Vollmer, Computers & Geosciences 21, 1995, 31 (both from memory; mean and
 * variance derived here).
 */
export function poleDensity(lines: readonly Line[], size = 41): PoleDensity {
  if (lines.length === 0) throw new DegenerateError('too few', 'lines', 0, 'one or more lines')
  const vectors = lines.map((line, i) => vectorOf(checkedLine(line, `lines[${i}]`)))
  const n = vectors.length
  const f = 2 * (1 + n / kamb ** 2)
  const average = (1 - Math.exp(-f)) / f
  const sigma = Math.sqrt(n * ((1 - Math.exp(-2 * f)) / (2 * f) - average ** 2))
  let most = -Infinity
  const values = Array.from({ length: size * size }, (_, k) => {
    const [x, y] = [k % size, Math.floor(k / size)].map(i => 2 * i / (size - 1) - 1) as [number, number]
    const r = Math.hypot(x, y)
    if (r > 1 + 2 / (size - 1)) return Number.NaN
    // A little past the rim the value at the rim: so that contours reach it.
    const held = r > 1 ? [x / r, y / r] as const : [x, y] as const
    const here = vectorOf(fromEqualArea(held))
    const count = vectors.reduce((sum, v) => sum + Math.exp(f * (Math.abs(dot(v, here)) - 1)), 0)
    const value = (count - n * average) / sigma
    if (r <= 1) most = Math.max(most, value)
    return value
  })
  return { size, values, most, sharpness: f }
}
