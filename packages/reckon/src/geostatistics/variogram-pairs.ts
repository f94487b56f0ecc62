import type { Sample } from './model.ts'

/** A fan of directions: the unit vector (sin, cos) of its axis from (+x, +y) and the cosine of half its angle. */
export interface Fan { readonly sin: number, readonly cos: number, readonly limit: number }

/** Per bin: pairs, summed distances, summed squared (robust: square-rooted) absolute differences. */
export interface PairSums { readonly pairs: Float64Array, readonly distances: Float64Array, readonly differences: Float64Array }

/** Slack on the edge of a fan, in cosine: a pair exactly on the edge is in whatever the rounding. */
const EDGE = 1e-12

/** Sums all pairs of samples into bins (0, w], (w, 2w] ... that begin below the cutoff; pairs beyond the cutoff are left out. */
export function sumPairs(points: readonly Sample[], cutoff: number, width: number, fan: Fan | undefined, robust: boolean): PairSums {
  const bins = binCount(cutoff, width)
  const sums = { pairs: new Float64Array(bins), distances: new Float64Array(bins), differences: new Float64Array(bins) }
  const order = [...points].sort((a, b) => a[0] - b[0])
  const xs = Float64Array.from(order, point => point[0])
  const ys = Float64Array.from(order, point => point[1])
  const zs = Float64Array.from(order, point => point[2])
  const cutoff2 = cutoff * cutoff
  for (let i = 0; i < xs.length; i++) {
    const x = xs[i]!
    const y = ys[i]!
    const z = zs[i]!
    for (let j = i + 1; j < xs.length; j++) {
      const dx = xs[j]! - x
      if (dx > cutoff) break
      const dy = ys[j]! - y
      const h2 = dx * dx + dy * dy
      if (h2 > cutoff2 || h2 === 0) continue
      const h = Math.sqrt(h2)
      if (fan !== undefined && Math.abs(dx * fan.sin + dy * fan.cos) < (fan.limit - EDGE) * h) continue
      const difference = zs[j]! - z
      // Bins are closed above; the last takes what rounding of h / width would put past the end.
      const bin = Math.min(Math.ceil(h / width) - 1, bins - 1)
      sums.pairs[bin]! += 1
      sums.distances[bin]! += h
      sums.differences[bin]! += robust ? Math.sqrt(Math.abs(difference)) : difference * difference
    }
  }
  return sums
}

/** How many bins of this width start below the cutoff; a cutoff that is a whole number of widths but for rounding gets just those. */
export function binCount(cutoff: number, width: number): number {
  return Math.max(1, Math.ceil(cutoff / width - 1e-9))
}
