import { DegenerateError, InputError } from '../core/index.ts'
import type { Enu, Matrix3 } from '../core/index.ts'
import { symmetricEigen } from './symmetric-eigen.ts'
import { cross, dot, length, outer, plus, scaled, subtract, unit, zeroMatrix } from './vector.ts'

/** Principal directions of a cloud of points about a centre, longest first, with the root of the sum of squares along each. */
export interface Spread { readonly axes: readonly [Enu, Enu, Enu], readonly sizes: Enu }

/** Refuses a point that is not three finite numbers; returns it. */
export function checkedPoint(point: Enu, field: string): Enu {
  if (point.length !== 3) throw new InputError(field, point, '[east, north, up]')
  point.forEach((value, k) => {
    if (!Number.isFinite(value)) throw new InputError(`${field}[${k}]`, value, 'a finite number')
  })
  return point
}

export const checkPoints = (points: readonly Enu[], field: string): void => points.forEach((point, i) => { checkedPoint(point, `${field}[${i}]`) })

/** The largest coordinate, without its sign. */
export const largestOf = (points: readonly Enu[]): number => points.reduce((top, p) => Math.max(top, Math.abs(p[0]), Math.abs(p[1]), Math.abs(p[2])), 0)

export const scatterOf = (rows: readonly Enu[]): Matrix3 => rows.reduce((sum, row) => plus(sum, outer(row), 1), zeroMatrix)

/**
 * Principal directions of rows already taken about their centre.
 *
 * The longest is taken out of the rows before the second is sought. Squaring them all at once would lose everything
 * smaller than 1e-8 of the longest, and a line would pass for a plane.
 */
export function spreadOf(rows: readonly Enu[]): Spread {
  const scale = largestOf(rows)
  if (scale === 0) return { axes: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], sizes: [0, 0, 0] }
  const small = rows.map(row => scaled(row, 1 / scale))
  const first = symmetricEigen(scatterOf(small)).vectors[0]
  const rest = symmetricEigen(scatterOf(small.map(row => subtract(row, scaled(first, dot(row, first))))))
  const second = squareTo(first, rest.vectors[0])
  const third = cross(first, second)
  const size = (axis: Enu) => scale * Math.sqrt(small.reduce((total, row) => total + dot(row, axis) ** 2, 0))
  return { axes: [first, second, third], sizes: [size(first), size(second), size(third)] }
}

/** The part of a vector square to a unit vector, made unit; any such direction when nothing is left of it. */
function squareTo(axis: Enu, vector: Enu): Enu {
  const left = subtract(vector, scaled(axis, dot(vector, axis)))
  if (length(left) > 0.5) return unit(left)
  const other: Enu = Math.abs(axis[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0]
  return unit(cross(axis, other))
}

/**
 * Refuses points that lie on one spot or on one line, or fill space evenly, as far as their digits can tell.
 * @param largest the largest coordinate before centring: it sets what rounding has already cost
 * @throws DegenerateError("coincident" | "collinear" | "no preferred plane")
 */
export function requirePlane(spread: Spread, count: number, largest: number, field: string): void {
  const [s1, s2, s3] = spread.sizes
  const rounding = count * Number.EPSILON
  if (s1 <= rounding * largest) throw new DegenerateError('coincident', field, count, 'points that are apart')
  if (s2 <= rounding * Math.max(largest, s1)) throw new DegenerateError('collinear', field, count, 'points that do not lie on one line')
  if (s2 - s3 <= rounding * s1) throw new DegenerateError('no preferred plane', field, count, 'points that lie nearer to one plane than to any other')
}
