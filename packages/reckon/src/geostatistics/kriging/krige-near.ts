import { solveForward4 } from '../linear/interleaved.ts'
import { fillToSupport } from '../support.ts'
import { OneTarget } from './krige-plain.ts'
import type { Estimates } from './krige-plain.ts'
import { NeighbourGrid } from './neighbour-grid.ts'
import { Neighbourhood } from './neighbourhood.ts'
import type { Problem } from './options.ts'
import { SharedSystem } from './shared-system.ts'
import { TargetSystem } from './target-system.ts'
import { tilesOf } from './tiles.ts'

/** Room in a union beside the neighbours of one target; a tile whose targets together use more is halved. */
const ROOM = 96

/** Kriging every target from its k nearest samples, k below their number, tile by tile. */
export function krigeNear(problem: Problem): Estimates {
  const { targets } = problem
  const means = new Float64Array(targets.count)
  const variances = new Float64Array(targets.count)
  const worker = new TileKriging(problem, means, variances)
  const tiles = tilesOf(targets.xs, targets.ys, tileSide(problem))
  for (let i = 0; i + 1 < tiles.starts.length; i++) worker.estimate(tiles.order, tiles.starts[i]!, tiles.starts[i + 1]!)
  return { means, variances, regularised: worker.regularised }
}

/** Side of a tile that holds about 16 targets, but no more than 1.2 and no less than 0.08 of the area of one sample. */
function tileSide({ samples, targets }: Problem): number {
  const width = extent(samples.xs)
  const height = extent(samples.ys)
  const perSample = (width * height || Math.max(width, height) ** 2 / samples.count) / samples.count
  const share = 16 * samples.count / Math.max(targets.count, 1)
  return Math.sqrt(perSample * Math.min(1.2, Math.max(0.08, share)))
}

function extent(values: Float64Array): number {
  let [low, high] = [Infinity, -Infinity]
  for (const value of values) {
    low = Math.min(low, value)
    high = Math.max(high, value)
  }
  return high - low
}

class TileKriging {
  private readonly near: Neighbourhood
  private readonly shared: SharedSystem
  private readonly target: TargetSystem
  private readonly room: number
  private readonly four: Float64Array
  private plain: OneTarget | undefined

  constructor(private readonly problem: Problem, private readonly means: Float64Array, private readonly variances: Float64Array) {
    const { samples, neighbours: k } = problem
    this.room = Math.min(samples.count, k + ROOM)
    this.near = new Neighbourhood(samples, NeighbourGrid.of(samples.xs, samples.ys), k)
    this.shared = new SharedSystem(problem, this.room)
    this.target = new TargetSystem(problem, this.shared)
    this.four = new Float64Array(4 * k)
  }

  get regularised(): boolean {
    return this.plain?.regularised ?? false
  }

  estimate(order: Int32Array, from: number, to: number): void {
    const { targets } = this.problem
    this.near.find(targets.xs, targets.ys, order, from, to)
    if (this.near.size > this.room) {
      const middle = (from + to) >> 1
      this.estimate(order, from, middle)
      this.estimate(order, middle, to)
      return
    }
    const sound = this.shared.prepare(this.near)
    for (let at = from; at < to; at += 4) {
      if (sound) this.reduceFour(order, at, to)
      for (let r = 0; r < 4 && at + r < to; r++) this.finish(order[at + r]!, sound, r, at + r - from)
    }
  }

  /** q = L^-1 c over the core for four targets at once (the last repeated where fewer are left). */
  private reduceFour(order: Int32Array, at: number, to: number): void {
    const { covariance, support, targets } = this.problem
    const { shared, four } = this
    for (let r = 0; r < 4; r++) {
      const t = order[Math.min(at + r, to - 1)]!
      fillToSupport(covariance, support, four, r, 4, shared.xs, shared.ys, 0, shared.core, targets.xs[t]!, targets.ys[t]!)
    }
    solveForward4(shared.l, shared.core, shared.core, four)
  }

  private finish(t: number, sound: boolean, r: number, place: number): void {
    const { near, target } = this
    if (sound && target.estimate(t, this.four, r, near.extras, place * this.problem.neighbours, near.extraCount[place]!, near.union[0]!)) {
      this.means[t] = target.mean
      this.variances[t] = target.variance
      return
    }
    // What rounding makes singular here, the plain way says properly: it raises the diagonal, or tells the cause.
    this.plain ??= new OneTarget(this.problem)
    this.plain.estimate(t)
    this.means[t] = this.plain.mean
    this.variances[t] = this.plain.variance
  }
}
