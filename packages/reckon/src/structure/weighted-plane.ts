import type { Enu, Matrix3 } from '../core/index.ts'
import { symmetricEigen } from './symmetric-eigen.ts'
import { add, along, dot, identity, length, outer, plus, scaled, subtract, zeroMatrix } from './vector.ts'

/** What pulls on a plane: points with covariances and, if any, unit normals read in place with the variance of their direction (radians squared per axis). */
export interface PlanePull {
  readonly points: readonly Enu[]
  readonly covariances: readonly Matrix3[]
  /** Variance added to each point's along the normal: the surface's own unevenness. */
  readonly unevenness: number
  readonly normals: readonly Enu[]
  readonly spreads: readonly number[]
}

export interface WeightedPlane {
  readonly normal: Enu
  readonly centroid: Enu
  readonly residuals: readonly number[]
  /** Variance of each residual's point along the normal, unevenness included. */
  readonly variances: readonly number[]
  readonly normalCovariance: Matrix3
  readonly offsetVariance: number
  /** How many of the two angles the readings settle; the points settle the rest. */
  readonly anglesFromNormals: number
}

const stepsAllowed = 200
const still = 1e-14 // radians; a turn this small is rounding

/**
 * The most likely plane for points with their own covariances and for normals read in place, from a starting normal.
 *
 * Minimises sum (distance² / variance along the normal) + sum (sin² of the angle to each read normal / its variance). The weights depend
 * on the normal, so the sum is solved over and over until the normal stands still, with the term that keeps the weights from pulling it
 * (the fundamental numerical scheme: (M - L + R) n smallest).
 * @param start unit normal to start from
 * Source: Chojnacki, Brooks, van den Hengel and Gawley, IEEE Trans. Pattern Analysis 22, 2000, 1294 (from memory).
 */
export function weightedPlane(pull: PlanePull, start: Enu): WeightedPlane {
  const read = pull.normals.reduce((sum, m, i) => plus(plus(sum, identity, 1 / pull.spreads[i]!), outer(m), -1 / pull.spreads[i]!), zeroMatrix)
  let normal = start
  for (let step = 0; step < stepsAllowed; step++) {
    const { rows, weights, residuals } = about(pull, normal)
    const next = symmetricEigen(systemOf(pull, read, { rows, weights, residuals })).vectors[2]
    const turned = dot(next, normal) < 0 ? scaled(next, -1) : next
    const change = length(subtract(turned, normal))
    normal = turned
    if (change < still) break
  }
  return described(pull, normal[2] < 0 ? scaled(normal, -1) : normal, read)
}

/** M - L + R at a normal. */
function systemOf(pull: PlanePull, read: Matrix3, at: { rows: readonly Enu[], weights: readonly number[], residuals: readonly number[] }): Matrix3 {
  return at.rows.reduce((sum, row, i) => {
    const weight = at.weights[i]!
    return plus(plus(sum, outer(row), weight), pull.covariances[i]!, -((weight * at.residuals[i]!) ** 2))
  }, read)
}

/** Weights, weighted centre, centred rows and distances for a normal. */
function about(pull: PlanePull, normal: Enu) {
  const variances = pull.covariances.map(c => along(c, normal) + pull.unevenness)
  const weights = variances.map(v => 1 / v)
  const total = weights.reduce((sum, w) => sum + w, 0)
  const centroid = pull.points.reduce<Enu>((sum, p, i) => add(sum, scaled(p, weights[i]! / total)), [0, 0, 0])
  const rows = pull.points.map(p => subtract(p, centroid))
  return { variances, weights, total, centroid, rows, residuals: rows.map(row => dot(row, normal)) }
}

function described(pull: PlanePull, normal: Enu, read: Matrix3): WeightedPlane {
  const { variances, weights, total, centroid, rows, residuals } = about(pull, normal)
  const { values, vectors } = symmetricEigen(systemOf(pull, read, { rows, weights, residuals }))
  const readAlong = along(read, normal)
  let normalCovariance = zeroMatrix
  let anglesFromNormals = 0
  for (const k of [0, 1] as const) {
    const information = values[k] - values[2]
    normalCovariance = plus(normalCovariance, outer(vectors[k]), 1 / information)
    anglesFromNormals += Math.max(0, along(read, vectors[k]) - readAlong) / information
  }
  return { normal, centroid, residuals, variances, normalCovariance, offsetVariance: 1 / total, anglesFromNormals: Math.min(2, anglesFromNormals) }
}
