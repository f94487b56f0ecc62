import { backwardSolve, choleskyInPlace, forwardSolve } from '../../core/index.ts'
import type { Enu, Matrix3 } from '../../core/index.ts'
import { add, along, cross, outer, plus, scaled, subtract, unit, zeroMatrix } from '../vector.ts'
import type { MarkerLook } from './marker-offset.ts'

/** A place on a marker: its step from a common origin, that step along the normal as read, and whether it lies beyond the fault. */
export interface WallPlace { readonly step: Enu, readonly height: number, readonly far: boolean }

/** A direction square to the normal in which the normal may turn, with the variance of that, radians squared. */
export interface Turn { readonly direction: Enu, readonly variance: number }

export interface WallsGiven { readonly normal: Enu, readonly turns: readonly Turn[], readonly sigma: number }

/** One way of giving the places to walls: what it makes of the offset, and the log of its marginal likelihood, a constant apart. */
export interface WallsFit { readonly look: MarkerLook, readonly log: number }

/** How much is thought to be known of the scatter before it is seen, in readings. */
const priorFreedom = 4
/** The pull of the readings on the normal is set against a scatter that is itself being found; it stands still after a few rounds. */
const rounds = 3

/** The turns a normal may make; a direction in which it may not turn is left out. */
export function turnsOf(normal: Enu, covariance: Matrix3): readonly Turn[] {
  const first = unit(cross(normal, Math.abs(normal[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]))
  return [first, cross(normal, first)].map(direction => ({ direction, variance: along(covariance, direction) })).filter(t => t.variance > 0)
}

/**
 * Least squares for one way: a height for each side, half a thickness if there are walls, and the turns of the normal.
 * @param walls  -1 or 1 for each place; undefined for a marker without thickness
 */
export function fitWalls(places: readonly WallPlace[], walls: readonly number[] | undefined, given: WallsGiven): WallsFit {
  const { normal, turns, sigma } = given
  const flat = walls ? 3 : 2
  const rows = places.map((p, i) => [p.far ? 0 : 1, p.far ? 1 : 0, ...(walls ? [walls[i]!] : []), ...turns.map(t => -dot3(t.direction, p.step))])
  const heights = places.map(p => p.height)
  const freedom = priorFreedom + places.length - flat
  let scale = sigma ** 2
  let solved = solve(rows, heights, flat, turns.map(t => scale / t.variance))
  for (let round = 0; round < rounds; round++) {
    scale = (priorFreedom * sigma ** 2 + solved.rss) / freedom
    solved = solve(rows, heights, flat, turns.map(t => scale / t.variance))
  }
  const { found, c, rss, logDeterminant } = solved
  const log = flat / 2 * Math.log(2 * Math.PI) - logDeterminant / 2 + logGammaHalf(freedom) - freedom / 2 * Math.log((priorFreedom * sigma ** 2 + rss) / 2)
  const turned = unit(turns.reduce((n, t, k) => add(n, scaled(t.direction, found[flat + k]!)), normal))
  return {
    log,
    look: { ...givenNormal(c, flat, turns, scale), normal: turned, offset: found[1]! - found[0]!, freedom, chance: 1 },
  }
}

const dot3 = (a: Enu, b: Enu) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

/** Normal equations with a pull of its own on the last unknowns. `c` is the inverse; `rss` counts the pulls too. */
function solve(rows: readonly (readonly number[])[], heights: readonly number[], flat: number, pulls: readonly number[]) {
  const size = flat + pulls.length
  const factor = new Float64Array(size * size)
  const found = new Float64Array(size)
  rows.forEach((row, i) => row.forEach((a, j) => {
    found[j]! += a * heights[i]!
    row.forEach((b, k) => { factor[j * size + k]! += a * b })
  }))
  pulls.forEach((pull, k) => { factor[(flat + k) * (size + 1)]! += pull })
  choleskyInPlace(factor, size)
  const solved = (b: Float64Array) => { forwardSolve(factor, size, b); backwardSolve(factor, size, b); return b }
  solved(found)
  const columns = Array.from({ length: size }, (_, k) => solved(Float64Array.from({ length: size }, (__, j) => j === k ? 1 : 0)))
  const rss = rows.reduce((sum, row, i) => sum + (heights[i]! - row.reduce((at, a, j) => at + a * found[j]!, 0)) ** 2, 0)
    + pulls.reduce((sum, pull, k) => sum + pull * found[flat + k]! ** 2, 0)
  const logDeterminant = 2 * columns.reduce((sum, _, k) => sum + Math.log(factor[k * (size + 1)]!), 0)
  return { found, rss, logDeterminant, c: (j: number, k: number) => columns[k]![j]! }
}

/** Covariance of the normal, and of the offset what is left when the normal is known: sigma, and the arm by which it follows the normal. */
function givenNormal(c: (j: number, k: number) => number, flat: number, turns: readonly Turn[], scale: number): Pick<MarkerLook, 'sigma' | 'arm'> & { readonly covariance: Matrix3 } {
  const between = turns.map((_, k) => scale * (c(1, flat + k) - c(0, flat + k)))
  const own = turns.map((_, k) => turns.map((__, m) => scale * c(flat + k, flat + m)))
  const shares = solvedSmall(own, between)
  const symmetric = (t: Enu, u: Enu) => plus(outer(add(t, u)), outer(subtract(t, u)), -1) // 2 (t uᵀ + u tᵀ)
  return {
    sigma: Math.sqrt(scale * (c(0, 0) + c(1, 1) - 2 * c(0, 1)) - between.reduce((sum, b, k) => sum + b * shares[k]!, 0)),
    arm: turns.reduce<Enu>((sum, t, k) => add(sum, scaled(t.direction, shares[k]!)), [0, 0, 0]),
    covariance: turns.reduce((sum, t, k) => turns.reduce((inner, u, m) => plus(inner, symmetric(t.direction, u.direction), own[k]![m]! / 4), sum), zeroMatrix),
  }
}

/** Solves none, one or two equations with a positive definite matrix. */
function solvedSmall(a: readonly (readonly number[])[], b: readonly number[]): readonly number[] {
  if (b.length === 0) return []
  if (b.length === 1) return [b[0]! / a[0]![0]!]
  const determinant = a[0]![0]! * a[1]![1]! - a[0]![1]! * a[1]![0]!
  return [(a[1]![1]! * b[0]! - a[0]![1]! * b[1]!) / determinant, (a[0]![0]! * b[1]! - a[1]![0]! * b[0]!) / determinant]
}

/** Log of the gamma function at k/2, k a whole number above zero. */
function logGammaHalf(k: number): number {
  let sum = k % 2 === 0 ? 0 : Math.log(Math.PI) / 2
  for (let at = k - 2; at > 0; at -= 2) sum += Math.log(at / 2)
  return sum
}
