import { DegenerateError, InputError } from '../core/index.ts'
import type { Enu, Matrix3 } from '../core/index.ts'
import { attitudeOf, dipDirectionOf } from './attitude.ts'
import { checkedCovariance } from './covariance.ts'
import type { CovarianceRows } from './covariance.ts'
import type { FittedPlane } from './fitted-plane.ts'
import { orientationDoubt } from './orientation-doubt.ts'
import { checkPoints, largestOf, requirePlane, spreadOf } from './spread.ts'
import { add, along, dot, outer, plus, scaled, subtract, zeroMatrix } from './vector.ts'
import { weightedPlane } from './weighted-plane.ts'

/**
 * Fits a plane to points by total least squares: the plane for which the sum of squared distances, taken square to it, is least.
 *
 * Use when the scatter is in all three coordinates, as with vein contacts taped from stations. With a covariance for each point the distances
 * are weighted by each point's variance along the normal, and the doubt of the result follows from them (and from the misfit, when that is worse).
 * @param points       three or more [east, north, up], any length unit
 * @param covariances  one 3 x 3 matrix a point, square of that unit; a point must have some variance along the normal
 * @returns see FittedPlane. Without covariances the doubt comes from the misfit alone, and three points have none to give
 * @throws DegenerateError("too few" | "coincident" | "collinear" | "no preferred plane"); InputError for numbers that are not finite
 * Accuracy: exact planes come back to about 1e-14 of the spread of the points.
 * Source: Golub and Van Loan, Matrix Computations, total least squares (from memory).
 */
export function fitPlane(points: readonly Enu[], options: { readonly covariances?: readonly CovarianceRows[] } = {}): FittedPlane {
  if (points.length < 3) throw new DegenerateError('too few', 'points', points.length, 'three or more points')
  checkPoints(points, 'points')
  const { covariances } = options
  if (covariances && covariances.length !== points.length) throw new InputError('covariances', covariances.length, `as many as points (${points.length})`)
  const centroid = middleOf(points)
  const rows = points.map(point => subtract(point, centroid))
  const spread = spreadOf(rows)
  requirePlane(spread, points.length, largestOf(points), 'points')
  const upward = spread.axes[2][2] < 0 ? scaled(spread.axes[2], -1) : spread.axes[2]
  return covariances ? weighted(rows, centroid, covariances.map((c, i) => checkedCovariance(c, `covariances[${i}]`)), upward)
    : plain(rows, centroid, spread.sizes, spread.axes, upward)
}

/** The plain middle, summed about the first point so that large coordinates cost no digits. */
export function middleOf(points: readonly Enu[]): Enu {
  const first = points[0]!
  return add(first, scaled(points.reduce<Enu>((sum, point) => add(sum, subtract(point, first)), [0, 0, 0]), 1 / points.length))
}

function plain(rows: readonly Enu[], centroid: Enu, sizes: Enu, axes: readonly Enu[], normal: Enu): FittedPlane {
  const residuals = rows.map(row => dot(row, normal))
  const squares = residuals.reduce((sum, r) => sum + r * r, 0)
  const freedom = rows.length - 3
  const sigma = Math.sqrt(squares / freedom)
  const tilt = (k: 0 | 1): Matrix3 => outer(scaled(axes[k]!, sigma / sizes[k] / Math.sqrt(1 - (sizes[2] / sizes[k]) ** 2)))
  const attitude = attitudeOf(normal)
  return {
    ...attitude, dipDirection: dipDirectionOf(attitude.strike), normal, centroid, residuals, freedom, varianceFactor: undefined,
    rms: Math.sqrt(squares / rows.length),
    doubt: freedom > 0 ? orientationDoubt(attitude, plus(tilt(0), tilt(1), 1)) : undefined,
    offsetSigma: freedom > 0 ? sigma / Math.sqrt(rows.length) : undefined,
  }
}

function weighted(rows: readonly Enu[], middle: Enu, covariances: readonly Matrix3[], start: Enu): FittedPlane {
  covariances.forEach((c, i) => {
    if (!(along(c, start) > 0)) throw new InputError(`covariances[${i}]`, c, 'a variance above zero square to the plane')
  })
  const fit = weightedPlane({ points: rows, covariances, unevenness: 0, normals: [], spreads: [] }, start)
  const freedom = rows.length - 3
  const chiSquare = fit.residuals.reduce((sum, r, i) => sum + r * r / fit.variances[i]!, 0)
  const varianceFactor = freedom > 0 ? chiSquare / freedom : undefined
  // Stated errors that are too small for the misfit are not believed; stated errors that are larger than it are.
  const stretch = Math.max(1, varianceFactor ?? 1)
  const attitude = attitudeOf(fit.normal)
  return {
    ...attitude, dipDirection: dipDirectionOf(attitude.strike), normal: fit.normal, centroid: add(middle, fit.centroid),
    residuals: fit.residuals, freedom, varianceFactor,
    rms: Math.sqrt(fit.residuals.reduce((sum, r) => sum + r * r, 0) / rows.length),
    doubt: orientationDoubt(attitude, plus(zeroMatrix, fit.normalCovariance, stretch)),
    offsetSigma: Math.sqrt(fit.offsetVariance * stretch),
  }
}

/** The plane through three or more points: `fitPlane` without stated errors. Three points give it exactly. */
export const planeThrough = (points: readonly Enu[]): FittedPlane => fitPlane(points)
