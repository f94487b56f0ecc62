import { DegenerateError } from '../../core/index.ts'
import { JITTER } from '../kriging/kriging-system.ts'
import { NeighbourGrid } from '../kriging/neighbour-grid.ts'
import { solveBackward, solveForward } from '../linear/cholesky.ts'
import { choleskyBlocked } from '../linear/cholesky-blocked.ts'
import type { Places } from './places.ts'

/** Along a path: how each place follows from the nearest of the samples and of the places before it. */
export class PathWeights {
  /** After `find`: neighbours (samples first, then places, numbered on), their weights, and the standard deviation left open. */
  readonly found: Int32Array
  readonly weights: Float64Array
  spread = 0
  private readonly grid: NeighbourGrid
  private readonly xs: Float64Array
  private readonly ys: Float64Array
  private readonly near: { readonly xs: Float64Array, readonly ys: Float64Array }
  private readonly l: Float64Array
  private readonly noisy: boolean

  constructor(private readonly places: Places, private readonly neighbours: number) {
    const { samples, count } = places
    const known = samples.count
    this.noisy = samples.errors.some(error => error > 0)
    this.xs = new Float64Array(known + count)
    this.ys = new Float64Array(known + count)
    this.xs.set(samples.xs)
    this.ys.set(samples.ys)
    this.xs.set(places.xs, known)
    this.ys.set(places.ys, known)
    this.grid = new NeighbourGrid(this.xs, this.ys)
    for (let i = 0; i < known; i++) this.grid.add(i)
    const most = Math.min(neighbours, known + count)
    this.found = this.grid.found
    this.weights = new Float64Array(most)
    this.near = { xs: new Float64Array(most), ys: new Float64Array(most) }
    this.l = new Float64Array(most * most)
  }

  /** Counts a place among those that come before. */
  add(place: number): void {
    this.grid.add(this.places.samples.count + place)
  }

  /** Simple kriging of a place from its nearest. Returns how many. @throws DegenerateError 'singular' */
  find(place: number): number {
    const { places: { covariance, xs, ys }, near, weights, l } = this
    const [x, y] = [xs[place]!, ys[place]!]
    const k = this.grid.nearest(x, y, this.neighbours)
    for (let i = 0; i < k; i++) {
      near.xs[i] = this.xs[this.found[i]!]!
      near.ys[i] = this.ys[this.found[i]!]!
    }
    if (!this.factor(k, 1) && !this.factor(k, 1 + JITTER)) {
      throw new DegenerateError('singular', 'targets', place, 'a model whose covariance matrix can be inverted; a nugget makes it so')
    }
    covariance.fill(weights, 0, 1, near.xs, near.ys, 0, k, x, y)
    solveForward(l, k, k, weights)
    let explained = 0
    for (let i = 0; i < k; i++) explained += weights[i]! * weights[i]!
    this.spread = Math.sqrt(Math.max(0, covariance.sill - explained))
    solveBackward(l, k, k, weights)
    return k
  }

  private factor(k: number, raise: number): boolean {
    const { places: { covariance, samples }, near, l, found } = this
    for (let i = 0; i < k; i++) {
      const error = found[i]! < samples.count ? samples.errors[found[i]!]! : 0
      // A place can lie on a sample only where that has an error; there the field is one, nugget and all.
      if (this.noisy) covariance.fill(l, i * k, 1, near.xs, near.ys, 0, i, near.xs[i]!, near.ys[i]!)
      else covariance.fillStructured(l, i * k, 1, near.xs, near.ys, 0, i, near.xs[i]!, near.ys[i]!)
      l[i * k + i] = (covariance.sill + error) * raise
    }
    return choleskyBlocked(l, k) < 0
  }
}
