export interface Box { readonly lower: readonly number[], readonly upper: readonly number[] }

/** Turns of one simplex at most; it is done when its values differ by less than this share of their size. */
const TURNS = 400
const CLOSE = 1e-13
/** A simplex can fold flat, on a wall above all: it is set up anew where it ended until that gains nothing, this often at most. */
const STARTS = 6

/**
 * Minimum of a function of a few variables within a box, by the downhill simplex; steps out of the box end on its wall.
 * @param start  a place in the box; not modified
 * @param step  size of the first simplex in each variable
 * @returns the place found: a local minimum, to about 1e-6 of the first step
 * Source: Nelder, J. A. and Mead, R. (1965) Computer J. 7: 308-313, doi:10.1093/comjnl/7.4.308.
 */
export function minimiseInBox(f: (x: readonly number[]) => number, start: readonly number[], step: readonly number[], box: Box): number[] {
  let best = { at: [...start], value: f(start) }
  for (let round = 0; round < STARTS; round++) {
    // Smaller and turned about each time, so that no two simplices are alike.
    const size = step.map((s, i) => s * 0.7 ** round * ((round + i) % 2 === 0 ? 1 : -1))
    const found = downhill(f, best.at, size, box)
    const gain = best.value - found.value
    if (gain > 0) best = found
    if (round > 1 && gain <= CLOSE * Math.max(1, Math.abs(best.value))) break
  }
  return best.at
}

interface Vertex { readonly at: number[], readonly value: number }

function downhill(f: (x: readonly number[]) => number, start: readonly number[], step: readonly number[], box: Box): Vertex {
  const inside = (x: readonly number[]) => x.map((value, i) => Math.min(Math.max(value, box.lower[i]!), box.upper[i]!))
  const vertex = (x: readonly number[]): Vertex => { const at = inside(x); return { at, value: f(at) } }
  const simplex = [vertex(start), ...start.map((value, i) => vertex(start.map((v, j) => {
    if (i !== j) return v
    const next = value + step[i]!
    // A first step through a wall is taken the other way.
    return next > box.upper[i]! || next < box.lower[i]! ? value - step[i]! : next
  })))]
  const n = start.length
  for (let turn = 0; turn < TURNS; turn++) {
    simplex.sort((a, b) => a.value - b.value)
    const [best, worst, second] = [simplex[0]!, simplex[n]!, simplex[n - 1]!]
    if (worst.value - best.value <= CLOSE * Math.max(1, Math.abs(best.value)) && spread(simplex.map(v => v.at), step) < 1e-5) break
    const centre = start.map((_, i) => simplex.slice(0, n).reduce((sum, v) => sum + v.at[i]!, 0) / n)
    const along = (t: number) => vertex(centre.map((c, i) => c + t * (worst.at[i]! - c)))
    const reflected = along(-1)
    if (reflected.value < best.value) {
      const further = along(-2)
      simplex[n] = further.value < reflected.value ? further : reflected
    } else if (reflected.value < second.value) simplex[n] = reflected
    else {
      const nearer = reflected.value < worst.value ? along(-0.5) : along(0.5)
      if (nearer.value < Math.min(worst.value, reflected.value)) simplex[n] = nearer
      else for (let i = 1; i <= n; i++) simplex[i] = vertex(simplex[i]!.at.map((value, j) => (value + best.at[j]!) / 2))
    }
  }
  return simplex.reduce((least, v) => v.value < least.value ? v : least)
}

function spread(places: readonly (readonly number[])[], step: readonly number[]): number {
  return Math.max(...step.map((size, i) => (Math.max(...places.map(p => p[i]!)) - Math.min(...places.map(p => p[i]!))) / Math.abs(size)))
}
