import { DegenerateError, finite, InputError } from '../core/index.ts'

/** A point that is in doubt both ways: one standard deviation of each, independent of each other. */
export interface DoubtfulPoint { readonly x: number, readonly y: number, readonly sx: number, readonly sy: number }

export interface YorkLine {
  readonly intercept: number
  readonly slope: number
  readonly interceptSd: number
  readonly slopeSd: number
  /** Of intercept with slope. */
  readonly covariance: number
  /** Sum of weighted squared distances over n - 2: near 1 where the stated doubts explain the scatter, above otherwise; undefined for two points. */
  readonly misfit: number | undefined
  /** Weighted middle of the points: a statement about the line is surest there. */
  readonly middle: { readonly x: number, readonly y: number }
}

const mostSteps = 200

/**
 * The straight line through points that are in doubt both ways. A plain regression of y on x would lie too flat, the more so the worse x is known.
 *
 * Use it on logs where two methods measure the same samples: pans against assays.
 * @param points  two or more, sx and sy above zero; not modified
 * @returns y = intercept + slope x, with standard deviations by the doubts as stated (not scaled by the misfit)
 * @throws DegenerateError("too few" | "all equal"); InputError
 * Accuracy: the slope is iterated to rounding; Pearson's data with York's weights give 5.47991, -0.480533.
 * Source: York, Evensen, Martinez and De Basabe Delgado, Am. J. Phys. 72, 2004, 367 (from memory).
 */
export function yorkLine(points: readonly DoubtfulPoint[]): YorkLine {
  if (points.length < 2) throw new DegenerateError('too few', 'points', points.length, 'two or more points')
  points.forEach((p, i) => {
    finite(p.x, `points[${i}].x`)
    finite(p.y, `points[${i}].y`)
    for (const side of ['sx', 'sy'] as const) if (!(p[side] > 0 && Number.isFinite(p[side]))) throw new InputError(`points[${i}].${side}`, p[side], 'a number above zero')
  })
  let slope = firstSlope(points)
  for (let step = 0; step < mostSteps; step++) {
    const next = improved(points, slope)
    const still = Math.abs(next - slope) <= 4 * Number.EPSILON * Math.abs(next)
    slope = next
    if (still) break
  }
  if (!Number.isFinite(slope)) throw new DegenerateError('all equal', 'points', points.length, 'points that do not stand straight above each other')
  return described(points, slope)
}

/** Slope of the reduced major axis: scatter over scatter, with the sign of their covariance. */
function firstSlope(points: readonly DoubtfulPoint[]): number {
  const n = points.length, mx = points.reduce((s, p) => s + p.x, 0) / n, my = points.reduce((s, p) => s + p.y, 0) / n
  const sum = (of: (p: DoubtfulPoint) => number) => points.reduce((s, p) => s + of(p), 0)
  const xx = sum(p => (p.x - mx) ** 2), yy = sum(p => (p.y - my) ** 2), xy = sum(p => (p.x - mx) * (p.y - my))
  const largest = Math.max(...points.map(p => Math.abs(p.x)))
  if (!(Math.sqrt(xx / n) > 4 * Number.EPSILON * largest)) throw new DegenerateError('all equal', 'points', n, 'points that differ in x')
  return (xy < 0 ? -1 : 1) * Math.sqrt(yy / xx)
}

/** Weights, weighted middle, and each point's place on the line as far as its doubts let it move. */
function weighed(points: readonly DoubtfulPoint[], slope: number) {
  const weights = points.map(({ sx, sy }) => 1 / (sy * sy + slope * slope * sx * sx))
  const total = weights.reduce((a, b) => a + b, 0)
  const middle = { x: points.reduce((s, p, i) => s + weights[i]! * p.x, 0) / total, y: points.reduce((s, p, i) => s + weights[i]! * p.y, 0) / total }
  const moved = points.map(({ x, y, sx, sy }, i) => weights[i]! * ((x - middle.x) * sy * sy + slope * (y - middle.y) * sx * sx))
  return { weights, total, middle, moved }
}

function improved(points: readonly DoubtfulPoint[], slope: number): number {
  const { weights, middle, moved } = weighed(points, slope)
  const top = points.reduce((s, p, i) => s + weights[i]! * moved[i]! * (p.y - middle.y), 0)
  const bottom = points.reduce((s, p, i) => s + weights[i]! * moved[i]! * (p.x - middle.x), 0)
  return bottom === 0 ? slope : top / bottom
}

function described(points: readonly DoubtfulPoint[], slope: number): YorkLine {
  const { weights, total, middle, moved } = weighed(points, slope)
  const intercept = middle.y - slope * middle.x
  const onLine = moved.map(b => middle.x + b), at = onLine.reduce((s, x, i) => s + weights[i]! * x, 0) / total
  const slopeVariance = 1 / onLine.reduce((s, x, i) => s + weights[i]! * (x - at) ** 2, 0)
  const distance = points.reduce((s, { x, y }, i) => s + weights[i]! * (y - intercept - slope * x) ** 2, 0)
  return {
    intercept, slope, middle, slopeSd: Math.sqrt(slopeVariance), interceptSd: Math.sqrt(1 / total + at * at * slopeVariance), covariance: -at * slopeVariance,
    misfit: points.length > 2 ? distance / (points.length - 2) : undefined,
  }
}

/** One standard deviation of the line's height at x. */
export const lineSd = ({ slopeSd, interceptSd, covariance }: YorkLine, x: number): number =>
  Math.sqrt(Math.max(0, interceptSd ** 2 + 2 * x * covariance + x * x * slopeSd ** 2))
