import { InputError } from '../core/index.ts'
import type { FieldGround } from './field/field-ground.ts'
import { keyedNormals } from './field/keyed-normals.ts'
import { shareOut } from './field/node-shares.ts'
import type { NodeShare } from './field/node-shares.ts'
import { allTogether, tilesOf } from './field/tiles.ts'
import type { Tile } from './field/tiles.ts'
import { PieceByPiece } from './field/whiten.ts'
import { generalisedMean, reaching, sampleCorrelations, sampleFactor } from './log-field.ts'
import type { FieldPosterior } from './log-field.ts'

export interface FieldOutcomes {
  /** One array a block, one number an outcome: the block's average of the quantity itself (not of its log). */
  readonly blocks: readonly Float64Array[]
}

export interface OutcomeOptions {
  readonly count: number
  readonly seed: number
  /** How many descriptions of the ground share the outcomes; 40 unless said, 10 above a hundred samples, where they differ little. */
  readonly slots?: number
  /** Another field that this one moves with: its seed, and the correlation of the two. */
  readonly companion?: { readonly seed: number, readonly correlation: number }
}

/**
 * Equally likely outcomes for blocks of ground, given the samples: for each the description of the ground is drawn by its weight, a field
 * with that description is drawn over samples and blocks as if nothing were known, and what it gets wrong at the samples is kriged and taken off.
 * So the mean that outcomes scatter about is the kriged one, whatever the order of drawing, and every outcome carries the doubt about the mean.
 *
 * Unlike `fieldOutcomesPlain`, which factors the blocks' whole covariance, its cost grows with the number of blocks, not with its cube. Two
 * things are not exact: a site is drawn from its 16 nearest earlier ones, and above 100 samples a block is conditioned on the nearest 32 to 100 (`tilesOf`).
 * @param siteOf  for each sample of the posterior the site of `ground` it lies at, below `ground.samples`
 * @returns values in the unit whose logs the samples hold; a place keeps its random numbers whatever else comes or goes
 * @throws InputError when a sample has no site
 * Source: conditioning by kriging: Journel and Huijbregts, Mining Geostatistics, 1978, VII.A (from memory); drawing from neighbours: Vecchia 1988.
 */
export function fieldOutcomes(ground: FieldGround, posterior: FieldPosterior, siteOf: readonly number[], options: OutcomeOptions): FieldOutcomes {
  const { samples } = posterior, { count } = options
  if (siteOf.length !== samples.length) throw new InputError('siteOf', siteOf.length, `one site a sample, ${samples.length} in all`)
  siteOf.forEach((site, i) => { if (!(site >= 0 && site < ground.samples)) throw new InputError(`siteOf[${i}]`, site, `a site below ${ground.samples}`) })
  const used = Int32Array.from(siteOf), tiles = tilesOf(ground, used)
  const { shares, outcomeOf } = shareOut(posterior.nodes, count, Math.min(count, options.slots ?? (samples.length > allTogether ? 10 : 40)))
  const field = noise(ground, count, options)
  drawFields(ground, field, count, shares)
  const blocks = Array.from({ length: ground.blocks }, () => new Float64Array(count))
  const errors = sampleNoise(ground, used, count, options.seed)
  const pieces = samples.length > allTogether ? new PieceByPiece(samples, 20) : undefined
  for (const share of shares) condition({ ground, posterior, used, tiles, field, errors, count, outcomeOf, blocks, pieces }, share)
  return { blocks }
}

/** Independent numbers of every site, one column an outcome. */
function noise(ground: FieldGround, count: number, { seed, companion }: OutcomeOptions): Float32Array {
  const sites = ground.keys.length, z = new Float32Array(sites * count), theirs = new Float32Array(companion ? count : 0)
  const rho = companion?.correlation ?? 0, rest = Math.sqrt(1 - rho * rho)
  for (let i = 0; i < sites; i++) {
    const own = z.subarray(i * count, (i + 1) * count)
    keyedNormals(seed, ground.keys[i]!, own)
    if (!companion) continue
    keyedNormals(companion.seed, ground.keys[i]!, theirs)
    for (let c = 0; c < count; c++) own[c] = rho * theirs[c]! + rest * own[c]!
  }
  return z
}

/** The same for what only the samples have: nugget and error. Samples at one place have their own. */
function sampleNoise(ground: FieldGround, used: Int32Array, count: number, seed: number): Float32Array {
  const z = new Float32Array(used.length * count), times = new Map<number, number>()
  used.forEach((site, i) => {
    const again = times.get(site) ?? 0
    times.set(site, again + 1)
    keyedNormals(seed + 1, `${ground.keys[site]!}|${again}`, z.subarray(i * count, (i + 1) * count))
  })
  return z
}

/** Turns the independent numbers into fields of unit variance, in place, each column with the range of its description. */
function drawFields(ground: FieldGround, u: Float32Array, count: number, shares: readonly NodeShare[]): void {
  const { order, earlier: { most, counts, neighbours } } = ground
  for (let s = 0; s < shares.length;) {
    const { range } = shares[s]!.node, from = shares[s]!.from
    let to = shares[s]!.to
    for (s++; s < shares.length && shares[s]!.node.range === range; s++) to = shares[s]!.to
    const { weights, spread } = ground.weightsAt(range)
    for (let step = 0; step < order.length; step++) {
      const row = order[step]! * count, sd = spread[step]!, base = step * most
      for (let c = from; c < to; c++) u[row + c]! *= sd
      addRows(u, row, u, j => neighbours[base + j]! * count, j => weights[base + j]!, counts[step]!, from, to)
    }
  }
}

/** out[row + c] += sum over j of weight(j) * source[at(j) + c], four rows at a time. */
function addRows(
  out: Float32Array, row: number, source: Float32Array, at: (j: number) => number, weight: (j: number) => number, rows: number, from: number, to: number,
): void {
  let j = 0
  for (; j + 3 < rows; j += 4) {
    const [p, q, r, s] = [at(j), at(j + 1), at(j + 2), at(j + 3)]
    const [wp, wq, wr, ws] = [weight(j), weight(j + 1), weight(j + 2), weight(j + 3)]
    for (let c = from; c < to; c++) out[row + c]! += wp * source[p + c]! + wq * source[q + c]! + wr * source[r + c]! + ws * source[s + c]!
  }
  for (; j < rows; j++) {
    const p = at(j), w = weight(j)
    for (let c = from; c < to; c++) out[row + c]! += w * source[p + c]!
  }
}

interface Task {
  readonly ground: FieldGround
  readonly posterior: FieldPosterior
  readonly used: Int32Array
  readonly tiles: readonly Tile[]
  readonly field: Float32Array
  readonly errors: Float32Array
  readonly count: number
  readonly outcomeOf: Int32Array
  readonly blocks: readonly Float64Array[]
  readonly pieces: PieceByPiece | undefined
}

/** The columns of one description, brought to the samples. */
function condition(task: Task, { node, from, to }: NodeShare): void {
  const { ground, posterior: { samples }, used, field, errors, count, outcomeOf, blocks } = task
  const n = samples.length, wide = to - from, root = Math.sqrt(reaching(node)), { self, table } = ground.weightsAt(node.range)
  const meanWeights = task.pieces ? task.pieces.whiten(node, true).weights : exactMeanWeights(samples, node)
  // What each outcome gets wrong at the samples, its own mean taken off.
  const residual = new Float32Array(n * wide), mean = new Float64Array(wide)
  for (let i = 0; i < n; i++) {
    const sd = Math.sqrt(node.variance * node.nuggetShare + samples[i]!.errorVariance), value = samples[i]!.logValue, w = meanWeights[i]!
    const u = used[i]! * count + from, e = i * count + from, row = i * wide
    for (let c = 0; c < wide; c++) {
      const r = value - root * field[u + c]! - sd * errors[e + c]!
      residual[row + c] = r
      mean[c]! += w * r
    }
  }
  for (let i = 0; i < n; i++) for (let c = 0; c < wide; c++) residual[i * wide + c]! -= mean[c]!
  const line = new Float32Array(wide)
  for (const tile of task.tiles) {
    const weights = tileWeights(task, tile, node, table)
    const k = tile.samples.length
    tile.blocks.forEach((b, t) => {
      const site = ground.samples + b, u = site * count + from, half = (node.variance - reaching(node) * self[site]!) / 2
      for (let c = 0; c < wide; c++) line[c] = mean[c]! + half + root * field[u + c]!
      addRows(line, 0, residual, j => tile.samples[j]! * wide, j => weights[t * k + j]!, k, 0, wide)
      const out = blocks[b]!
      for (let c = 0; c < wide; c++) out[outcomeOf[from + c]!] = Math.exp(line[c]!)
    })
  }
}

function exactMeanWeights(samples: FieldPosterior['samples'], node: NodeShare['node']): Float64Array {
  const { ones, precision } = generalisedMean(samples, sampleFactor(samples, sampleCorrelations(samples, node.range), node))
  return ones.map(value => value / precision)
}

/** Simple kriging weights of each block of a tile on the tile's samples, row by row. */
function tileWeights({ ground, posterior: { samples }, used }: Task, tile: Tile, node: NodeShare['node'], table: Parameters<FieldGround['correlation']>[0]): Float64Array {
  const k = tile.samples.length, sill = reaching(node), near = tile.samples
  const l = new Float64Array(k * k)
  for (let a = 0; a < k; a++) {
    for (let b = 0; b < a; b++) l[a * k + b] = sill * ground.correlation(table, used[near[a]!]!, used[near[b]!]!)
    l[a * k + a] = node.variance + samples[near[a]!]!.errorVariance
  }
  factor(l, k)
  const weights = new Float64Array(tile.blocks.length * k)
  tile.blocks.forEach((block, t) => {
    const w = weights.subarray(t * k, (t + 1) * k)
    for (let a = 0; a < k; a++) w[a] = sill * ground.correlation(table, ground.samples + block, used[near[a]!]!)
    for (let i = 0; i < k; i++) {
      let sum = w[i]!
      for (let c = 0; c < i; c++) sum -= l[i * k + c]! * w[c]!
      w[i] = sum / l[i * k + i]!
    }
    for (let i = k - 1; i >= 0; i--) {
      const x = w[i]! / l[i * k + i]!
      w[i] = x
      for (let c = 0; c < i; c++) w[c]! -= l[i * k + c]! * x
    }
  })
  return weights
}

/** Cholesky in place; a pivot lost to rounding (exact samples at one place) leaves that sample out. */
function factor(a: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    const diagonal = a[i * n + i]!
    let pivot = diagonal
    for (let j = 0; j < i; j++) {
      let sum = a[i * n + j]!
      for (let c = 0; c < j; c++) sum -= a[i * n + c]! * a[j * n + c]!
      a[i * n + j] = sum / a[j * n + j]!
      pivot -= a[i * n + j]! ** 2
    }
    a[i * n + i] = pivot > 1e-12 * diagonal ? Math.sqrt(pivot) : Infinity
  }
}
