import { DegenerateError, InputError } from '../core/index.ts'
import type { Degrees, Enu, Matrix3 } from '../core/index.ts'
import { attitudeOf, checkedAttitude, dipDirectionOf, normalOf } from './attitude.ts'
import type { Attitude } from './attitude.ts'
import { checkedCovariance } from './covariance.ts'
import type { CovarianceRows } from './covariance.ts'
import type { FittedPlane } from './fitted-plane.ts'
import { middleOf } from './fit-plane.ts'
import { orientationDoubt } from './orientation-doubt.ts'
import { checkPoints, largestOf, requirePlane, scatterOf, spreadOf } from './spread.ts'
import { symmetricEigen } from './symmetric-eigen.ts'
import { add, dot, subtract } from './vector.ts'
import { weightedPlane } from './weighted-plane.ts'
import type { PlanePull, WeightedPlane } from './weighted-plane.ts'

/** A place where the vein was touched: metres, and its covariance in m². */
export interface ContactPoint { readonly at: Enu, readonly covariance?: CovarianceRows }
/** Strike and dip read on the vein, with one standard deviation of the reading's direction in degrees. */
export interface AttitudeReading extends Attitude { readonly sigma?: Degrees }

export interface VeinObservations {
  readonly points: readonly ContactPoint[]
  readonly readings: readonly AttitudeReading[]
}

export interface FittedVein extends FittedPlane {
  /** How far the vein itself swings from a plane, one standard deviation, metres: what the survey's own errors do not explain. */
  readonly unevenness: number
  /** The same for the direction of the vein from place to place, degrees. */
  readonly swing: Degrees
  /** Angle of each reading from the plane, degrees. */
  readonly readingAngles: readonly Degrees[]
  /** Each point's distance and each reading's angle over its own standard deviation, unevenness and swing included. Above 3 wants a second look. */
  readonly pointTimes: readonly number[]
  readonly readingTimes: readonly number[]
}

/** Without a covariance a taped contact is taken as good to this, metres. Common practice, no source. */
export const usualPointSigma = 0.05
/** Without a stated one, a hand-compass reading on an uneven wall is taken as good to this, degrees. Common practice, no source. */
export const usualReadingSigma: Degrees = 3

const roundsAllowed = 60
const inRadians = (angle: Degrees): number => angle * Math.PI / 180

/**
 * The plane of a vein from places where it was touched and from strikes and dips read on it, each weighted by its own error.
 *
 * A vein is not a plane. How much it swings, beyond the stated errors, is found from the misfit itself (one variance for the points, one for
 * the readings, each set so that the misfit is as large as it should be) and added to the errors before they are weighed.
 * A single point with a reading is enough; points alone must not lie on a line.
 * @throws DegenerateError("too few") without a point, or without a reading and with fewer than three points; ("coincident" | "collinear") for
 *   points without a reading; InputError for numbers that are not finite
 * Source: weighting as in `weightedPlane`; the added variances after Paule and Mandel, J. Res. NBS 87, 1982, 377 (from memory).
 */
export function fitVeinPlane({ points, readings }: VeinObservations): FittedVein {
  if (points.length === 0) throw new DegenerateError('too few', 'points', 0, 'a point on the vein')
  if (readings.length === 0 && points.length < 3) throw new DegenerateError('too few', 'points', points.length, 'three or more points, or a reading of strike and dip')
  const places = points.map(p => p.at)
  checkPoints(places, 'points')
  const middle = middleOf(places)
  const rows = places.map(p => subtract(p, middle))
  const normals = readings.map((r, i) => normalOf(checkedAttitude(r, `readings[${i}]`)))
  const spread = spreadOf(rows)
  if (readings.length === 0) requirePlane(spread, points.length, largestOf(places), 'points')
  const start = readings.length === 0 ? spread.axes[2] : symmetricEigen(scatterOf(normals)).vectors[0]
  const covariances = points.map((p, i): Matrix3 => p.covariance ? checkedCovariance(p.covariance, `points[${i}].covariance`) : isotropic(usualPointSigma ** 2))
  const own = readings.map((r, i) => readingVariance(r, i))
  return settled({ points: rows, covariances, unevenness: 0, normals, spreads: own }, start, middle)
}

const isotropic = (v: number): Matrix3 => [[v, 0, 0], [0, v, 0], [0, 0, v]]

function readingVariance(reading: AttitudeReading, index: number): number {
  const sigma = reading.sigma ?? usualReadingSigma
  if (!(Number.isFinite(sigma) && sigma > 0)) throw new InputError(`readings[${index}].sigma`, sigma, 'degrees above zero')
  return inRadians(sigma) ** 2
}

/** Fits, finds the added variances from the misfit, and fits again, until they stand still. */
function settled(pull: PlanePull, start: Enu, middle: Enu): FittedVein {
  const floor = 1e-18 * Math.max(1, largestOf(pull.points) ** 2) // keeps a point with no stated error from an endless weight
  let [unevenness, swing] = [0, 0]
  let fit = weightedPlane({ ...pull, unevenness: floor }, start)
  for (let round = 0; round < roundsAllowed; round++) {
    const own = fit.variances.map(v => v - unevenness)
    const spare = pull.points.length - 1 - (2 - fit.anglesFromNormals)
    const wider = addedVariance(fit.residuals.map(r => r * r), own, spare)
    const angles = pull.normals.map(m => 1 - Math.min(1, dot(m, fit.normal) ** 2))
    const wilder = addedVariance(angles, pull.spreads, 2 * pull.normals.length - fit.anglesFromNormals)
    const same = Math.abs(wider - unevenness) <= 1e-9 * (wider + floor) && Math.abs(wilder - swing) <= 1e-9 * wilder
    unevenness = wider
    swing = wilder
    fit = weightedPlane({ ...pull, unevenness: unevenness + floor, spreads: pull.spreads.map(s => s + swing) }, fit.normal)
    if (same) break
  }
  return described(pull, fit, { unevenness, swing, middle })
}

/** The variance to add to each for the squares to sum to what their number says; 0 when they already sum to less. */
function addedVariance(squares: readonly number[], own: readonly number[], spare: number): number {
  if (spare < 0.5) return 0 // next to nothing to judge by
  const ratio = (added: number) => squares.reduce((sum, square, i) => sum + square / (own[i]! + added), 0) / spare
  if (ratio(0) <= 1) return 0
  let [low, high] = [0, squares.reduce((sum, square) => sum + square, 0) / spare]
  for (let step = 0; step < 80; step++) {
    const mid = (low + high) / 2
    if (ratio(mid) > 1) low = mid
    else high = mid
  }
  return high
}

function described(pull: PlanePull, fit: WeightedPlane, found: { unevenness: number, swing: number, middle: Enu }): FittedVein {
  const { residuals, variances } = fit
  const count = residuals.length
  const attitude = attitudeOf(fit.normal)
  const sines = pull.normals.map(m => Math.sqrt(1 - Math.min(1, dot(m, fit.normal) ** 2)))
  return {
    ...attitude, dipDirection: dipDirectionOf(attitude.strike), normal: fit.normal, centroid: add(found.middle, fit.centroid), residuals,
    rms: Math.sqrt(residuals.reduce((sum, r) => sum + r * r, 0) / count),
    freedom: count + 2 * pull.normals.length - 3,
    varianceFactor: undefined, // taken up by unevenness and swing
    doubt: orientationDoubt(attitude, fit.normalCovariance), offsetSigma: Math.sqrt(fit.offsetVariance),
    unevenness: Math.sqrt(found.unevenness), swing: Math.sqrt(found.swing) * 180 / Math.PI,
    readingAngles: sines.map(s => Math.asin(s) * 180 / Math.PI),
    pointTimes: residuals.map((r, i) => Math.abs(r) / Math.sqrt(variances[i]!)),
    readingTimes: sines.map((s, i) => s / Math.sqrt(pull.spreads[i]! + found.swing)),
  }
}
