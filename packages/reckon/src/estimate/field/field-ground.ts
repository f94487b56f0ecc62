import type { VeinPoint } from '../../core/index.ts'
import { coarseToFine } from './coarse-to-fine.ts'
import { ExponentialTable } from './exponential-table.ts'
import { nearestEarlier } from './nearest-earlier.ts'
import type { Earlier } from './nearest-earlier.ts'

/** A sample's place, or a block of ground as the few points that stand for it with equal weight. Its key gives it random numbers of its own. */
export interface FieldSite { readonly key: string, readonly points: readonly VeinPoint[] }

/** How each site of an unconditional field of unit variance is drawn from the nearest ones drawn before it. */
export interface SiteWeights {
  readonly table: ExponentialTable
  /** weights[step * most + j] for the j-th neighbour of that step. */
  readonly weights: Float64Array
  readonly spread: Float64Array
  /** Mean correlation within each site: 1 for a point. */
  readonly self: Float64Array
}

/** Neighbours a site is drawn from. With an exponential correlation and no nugget a few near ones screen off the rest. */
const neighbours = 16
/** Blocks this many times their own size apart: the middle stands for the average. */
const far = 2

/**
 * The sites of a field: the samples' places first, then the blocks. What hangs on places alone, and not on any value, is kept here and
 * shared: the order of drawing, the neighbours, and for each range the weights. So a new assay leaves it standing.
 */
export class FieldGround {
  readonly samples: number
  readonly blocks: number
  readonly xs: Float64Array
  readonly ys: Float64Array
  readonly order: Int32Array
  readonly earlier: Earlier
  readonly keys: readonly string[]
  private readonly starts: Int32Array
  private readonly pxs: Float64Array
  private readonly pys: Float64Array
  private readonly sizes: Float64Array
  private readonly known = new Map<number, SiteWeights>()

  /** @param samples sites of one point each; @param blocks sites of one point or more */
  constructor(samples: readonly FieldSite[], blocks: readonly FieldSite[]) {
    const sites = [...samples, ...blocks]
    this.samples = samples.length
    this.blocks = blocks.length
    this.keys = sites.map(s => s.key)
    this.starts = new Int32Array(sites.length + 1)
    sites.forEach((s, i) => { this.starts[i + 1] = this.starts[i]! + s.points.length })
    const points = sites.flatMap(s => s.points)
    this.pxs = Float64Array.from(points, p => p.along)
    this.pys = Float64Array.from(points, p => p.down)
    const middle = (key: 'along' | 'down') => Float64Array.from(sites, s => s.points.reduce((sum, p) => sum + p[key], 0) / s.points.length)
    this.xs = middle('along')
    this.ys = middle('down')
    this.sizes = Float64Array.from(sites, (s, i) => Math.max(...s.points.map(p => Math.hypot(p.along - this.xs[i]!, p.down - this.ys[i]!))))
    this.order = coarseToFine(this.xs, this.ys, this.keys)
    this.earlier = nearestEarlier(this.xs, this.ys, this.order, neighbours)
  }

  /** Correlation of two sites' averages. */
  correlation(table: ExponentialTable, a: number, b: number): number {
    const { starts, pxs, pys, xs, ys, sizes } = this
    const [dx, dy] = [xs[a]! - xs[b]!, ys[a]! - ys[b]!]
    const apart = far * (sizes[a]! + sizes[b]!)
    if (a !== b && dx * dx + dy * dy > apart * apart) return table.at(dx, dy)
    let sum = 0
    for (let p = starts[a]!; p < starts[a + 1]!; p++) {
      for (let q = starts[b]!; q < starts[b + 1]!; q++) sum += table.at(pxs[p]! - pxs[q]!, pys[p]! - pys[q]!)
    }
    return sum / ((starts[a + 1]! - starts[a]!) * (starts[b + 1]! - starts[b]!))
  }

  weightsAt(range: number): SiteWeights {
    const kept = this.known.get(range)
    if (kept) return kept
    const made = this.makeWeights(range)
    this.known.set(range, made)
    return made
  }

  private makeWeights(range: number): SiteWeights {
    const table = new ExponentialTable(range)
    const { order, earlier: { most, counts, neighbours: near } } = this
    const n = order.length
    const weights = new Float64Array(n * most), spread = new Float64Array(n), self = new Float64Array(n)
    const l = new Float64Array(most * most), w = new Float64Array(most)
    for (let step = 0; step < n; step++) {
      const i = order[step]!, k = counts[step]!, base = step * most
      self[i] = this.correlation(table, i, i)
      for (let a = 0; a < k; a++) {
        const site = near[base + a]!
        w[a] = this.correlation(table, i, site)
        for (let b = 0; b < a; b++) l[a * most + b] = this.correlation(table, site, near[base + b]!)
        // A trace on the diagonal keeps two sites at one place factorable.
        l[a * most + a] = self[site]! * (1 + 1e-9) + 1e-12
      }
      spread[step] = Math.sqrt(Math.max(0, self[i] - solveInto(l, most, k, w)))
      for (let a = 0; a < k; a++) weights[base + a] = w[a]!
    }
    return { table, weights, spread, self }
  }
}

/** Factors the k x k lower triangle in place and turns w into A⁻¹w; returns wᵀA⁻¹w. A pivot lost to rounding leaves its neighbour out. */
export function solveInto(a: Float64Array, stride: number, k: number, w: Float64Array): number {
  let taken = 0
  for (let i = 0; i < k; i++) {
    const row = i * stride
    for (let j = 0; j < i; j++) {
      let sum = a[row + j]!
      for (let c = 0; c < j; c++) sum -= a[row + c]! * a[j * stride + c]!
      a[row + j] = sum / a[j * stride + j]!
    }
    let pivot = a[row + i]!, value = w[i]!
    const least = 1e-10 * pivot
    for (let c = 0; c < i; c++) {
      pivot -= a[row + c]! ** 2
      value -= a[row + c]! * w[c]!
    }
    a[row + i] = pivot > least ? Math.sqrt(pivot) : Infinity
    w[i] = value / a[row + i]!
    taken += w[i]! ** 2
  }
  for (let i = k - 1; i >= 0; i--) {
    const x = w[i]! / a[i * stride + i]!
    w[i] = x
    for (let c = 0; c < i; c++) w[c]! -= a[i * stride + c]! * x
  }
  return taken
}
