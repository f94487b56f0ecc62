import type { Sample } from './model.ts'

/** A fan of directions: the unit vector (sin, cos) of its axis from (+x, +y) and the cosine of half its angle. */
export interface Fan { readonly sin: number, readonly cos: number, readonly limit: number }

/** Per bin: pairs, summed distances, summed squared (robust: square-rooted) absolute differences. */
export interface PairSums { readonly pairs: Float64Array, readonly distances: Float64Array, readonly differences: Float64Array }

/** Slack on the edge of a fan, in cosine: a pair exactly on the edge is in whatever the rounding. */
const EDGE = 1e-12
/** Strips of y per cutoff: narrow enough that few pairs looked at are too far apart, wide enough that strips hold many points. */
const STRIPS = 6

/**
 * Sums all pairs of samples into bins (0, w], (w, 2w] ... that begin below the cutoff; pairs beyond the cutoff are left out.
 *
 * Points are laid out in strips of y, by x within each, so that only pairs that can be near enough are looked at.
 */
export function sumPairs(points: readonly Sample[], cutoff: number, width: number, fan: Fan | undefined, robust: boolean): PairSums {
  const bins = binCount(cutoff, width)
  const sums = { pairs: new Float64Array(bins), distances: new Float64Array(bins), differences: new Float64Array(bins) }
  const { xs, ys, zs, starts, strip, south } = layInStrips(points, cutoff)
  const edges = Float64Array.from({ length: bins + 1 }, (_, bin) => bin === bins ? Infinity : bin * width)
  for (let a = 0; a + 1 < starts.length; a++) {
    for (let i = starts[a]!; i < starts[a + 1]!; i++) {
      addPairs(sums, xs, ys, zs, i, i + 1, starts[a + 1]!, cutoff, cutoff, width, edges, fan, robust)
      for (let b = a + 1; b + 1 < starts.length; b++) {
        // Strip b begins at least this far above the point.
        const rise = Math.max(0, south + strip * b - ys[i]!) * (1 - EDGE)
        if (rise > cutoff) break
        const reach = Math.sqrt(cutoff * cutoff - rise * rise) * (1 + EDGE)
        const from = firstAtOrAbove(xs, starts[b]!, starts[b + 1]!, xs[i]! - reach)
        addPairs(sums, xs, ys, zs, i, from, starts[b + 1]!, reach, cutoff, width, edges, fan, robust)
      }
    }
  }
  return sums
}

function layInStrips(points: readonly Sample[], cutoff: number) {
  const south = points.reduce((least, point) => Math.min(least, point[1]), Infinity)
  const north = points.reduce((most, point) => Math.max(most, point[1]), -Infinity)
  // Never more strips than points, however small the cutoff.
  const strip = Math.max(cutoff / STRIPS, (north - south) / Math.max(1, points.length))
  const stripOf = (point: Sample) => Math.floor((point[1] - south) / strip)
  const order = [...points].sort((a, b) => stripOf(a) - stripOf(b) || a[0] - b[0])
  const starts: number[] = []
  order.forEach((point, i) => { while (starts.length <= stripOf(point)) starts.push(i) })
  starts.push(order.length)
  const column = (j: 0 | 1 | 2) => Float64Array.from(order, point => point[j])
  return { xs: column(0), ys: column(1), zs: column(2), starts, strip, south }
}

function firstAtOrAbove(xs: Float64Array, from: number, to: number, x: number): number {
  let low = from
  let high = to
  while (low < high) {
    const middle = (low + high) >> 1
    if (xs[middle]! < x) low = middle + 1
    else high = middle
  }
  return low
}

/** Adds the pairs of point i with points from..to-1, whose x ascend, up to x + reach. */
function addPairs(
  sums: PairSums, xs: Float64Array, ys: Float64Array, zs: Float64Array, i: number, from: number, to: number, reach: number,
  cutoff: number, width: number, edges: Float64Array, fan: Fan | undefined, robust: boolean,
): void {
  const { pairs, distances, differences } = sums
  const [x, y, z] = [xs[i]!, ys[i]!, zs[i]!]
  const last = x + reach
  const cutoff2 = cutoff * cutoff
  const perWidth = 1 / width
  for (let j = from; j < to; j++) {
    if (xs[j]! > last) break
    const dx = xs[j]! - x
    const dy = ys[j]! - y
    const h2 = dx * dx + dy * dy
    if (h2 > cutoff2 || h2 === 0) continue
    const h = Math.sqrt(h2)
    if (fan !== undefined && Math.abs(dx * fan.sin + dy * fan.cos) < (fan.limit - EDGE) * h) continue
    // Bins are closed above: multiplying by 1 / width can be one bin off at an edge, which the edges put right.
    let bin = h * perWidth | 0
    if (bin >= differences.length) bin = differences.length - 1
    if (h <= edges[bin]!) bin--
    else if (h > edges[bin + 1]!) bin++
    const difference = zs[j]! - z
    pairs[bin]! += 1
    distances[bin]! += h
    differences[bin]! += robust ? Math.sqrt(Math.abs(difference)) : difference * difference
  }
}

/** How many bins of this width start below the cutoff; a cutoff that is a whole number of widths but for rounding gets just those. */
export function binCount(cutoff: number, width: number): number {
  return Math.max(1, Math.ceil(cutoff / width - 1e-9))
}
