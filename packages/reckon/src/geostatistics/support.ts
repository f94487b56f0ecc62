import { InputError, positive } from '../core/index.ts'
import type { Covariance } from './covariance.ts'

/**
 * What an estimate is of: a point, or the mean over a block, taken as a weighted mean over points (offsets from its centre).
 * Weights sum to 1.
 */
export interface Support {
  readonly isPoint: boolean
  readonly dxs: Float64Array
  readonly dys: Float64Array
  readonly weights: Float64Array
}

/** How a block is made of points: 4 x 4 Gauss-Legendre points, or the centres of n x n equal cells. */
export type Discretisation = 'gauss' | { readonly cells: number }

export const POINT: Support = { isPoint: true, dxs: Float64Array.of(0), dys: Float64Array.of(0), weights: Float64Array.of(1) }

/** The four Gauss-Legendre points and weights on [-1, 1]. Source: Abramowitz and Stegun (1964) table 25.4; closed form. */
const near = Math.sqrt(3 / 7 - 2 / 7 * Math.sqrt(6 / 5))
const far = Math.sqrt(3 / 7 + 2 / 7 * Math.sqrt(6 / 5))
const light = (18 - Math.sqrt(30)) / 36
const heavy = (18 + Math.sqrt(30)) / 36
const GAUSS = { at: [-far, -near, near, far], weight: [light, heavy, heavy, light] }

/**
 * A rectangular block [dx, dy] with sides along the axes, as points.
 * @throws InputError when a side is not above zero or `cells` is not a whole number from 1 to 64
 */
export function blockSupport(block: readonly [dx: number, dy: number], discretisation: Discretisation = 'gauss'): Support {
  positive(block[0], 'block[0]', 'a length above zero')
  positive(block[1], 'block[1]', 'a length above zero')
  const line = discretisation === 'gauss' ? GAUSS : cells(discretisation.cells)
  const n = line.at.length
  const make = (f: (i: number, j: number) => number) => Float64Array.from({ length: n * n }, (_, k) => f(Math.floor(k / n), k % n))
  return {
    isPoint: false,
    dxs: make((_, j) => line.at[j]! * block[0] / 2),
    dys: make(i => line.at[i]! * block[1] / 2),
    weights: make((i, j) => line.weight[i]! * line.weight[j]! / 4),
  }
}

function cells(n: number) {
  if (!(Number.isInteger(n) && n >= 1 && n <= 64)) throw new InputError('discretisation.cells', n, 'a whole number from 1 to 64')
  return { at: Array.from({ length: n }, (_, i) => (2 * i + 1) / n - 1), weight: Array.from({ length: n }, () => 2 / n) }
}

/** Variance of the mean over the support: C(0) at a point; for a block the mean covariance within it, the nugget left out. */
export function supportVariance(covariance: Covariance, support: Support): number {
  return support.isPoint ? covariance.sill : covarianceBetween(covariance, support, 0, 0, support, 0, 0)
}

/** Covariance of the means over two supports, the nugget left out. */
export function covarianceBetween(covariance: Covariance, a: Support, ax: number, ay: number, b: Support, bx: number, by: number): number {
  const line = new Float64Array(b.dxs.length)
  const xs = b.dxs.map(dx => bx + dx)
  const ys = b.dys.map(dy => by + dy)
  let sum = 0
  a.weights.forEach((weight, i) => {
    covariance.fillStructured(line, 0, 1, xs, ys, 0, line.length, ax + a.dxs[i]!, ay + a.dys[i]!)
    for (let j = 0; j < line.length; j++) sum += weight * b.weights[j]! * line[j]!
  })
  return sum
}

/**
 * out[at + stride * i] = covariance of the support's mean, centred at (x, y), with a sample at (xs[from + i], ys[from + i]).
 * A block and a sample in it share no nugget: what a sample has of it is averaged out over the block.
 */
export function fillToSupport(
  covariance: Covariance, support: Support, out: Float64Array, at: number, stride: number,
  xs: Float64Array, ys: Float64Array, from: number, count: number, x: number, y: number,
): void {
  if (support.isPoint) {
    covariance.fill(out, at, stride, xs, ys, from, count, x, y)
    return
  }
  for (let j = 0; j < support.weights.length; j++) {
    covariance.fillStructured(out, at, stride, xs, ys, from, count, x + support.dxs[j]!, y + support.dys[j]!, support.weights[j], j > 0)
  }
}
