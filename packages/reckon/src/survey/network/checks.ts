import type { RowOf } from './equations.ts'
import type { Model } from './model.ts'
import type { Rows } from './rows.ts'
import type { ShotReading, Tie, TieReading } from './types.ts'
import type { SightReading } from './sight.ts'
import type { BlockMatrix } from '../sparse/block-cholesky.ts'
import { degrees } from '../../core/index.ts'
import { rowCovariance } from './cofactors.ts'

/** A reading that can be wrong by itself, and how that would show. */
export interface Check {
  readonly shot?: number
  readonly tie?: number
  readonly reading: ShotReading | TieReading
  /** One standard deviation in the reading's own unit, degrees or length. */
  readonly sigma: number
  /** The rows an error in it shows in: one, or for a tie with correlated errors up to three. */
  readonly rows: readonly number[]
  /** By how much an error of one degree or length shows in each row. */
  readonly shows: readonly number[]
  /** Where its redundancy matrix begins in a Redundancy. */
  readonly start: number
}

/** The redundancy matrices R of all checks over their own rows, row-major, one after the other: how residuals answer to errors. */
export type Redundancy = Float64Array

const tieReadings = ['east', 'north', 'up'] as const

/** Every reading in use that can be tested, in the order of the list. */
export function listChecks(model: Model, list: readonly RowOf[]): Check[] {
  const tieRows = new Map<number, number[]>()
  list.forEach((row, i) => { if (row.is === 'tie') tieRows.set(row.tie.index, [...tieRows.get(row.tie.index) ?? [], i]) })
  const checks: Check[] = []
  let start = 0
  list.forEach((row, i) => {
    if (row.is === 'reading') {
      const { sight } = model.shots[row.shot]!
      const reading = sight.readings[row.at]!
      const sigma = ownSigma(sight, reading)
      checks.push({ shot: row.shot, reading: reading.reading, sigma, rows: [i], shows: [reading.sign / sigma], start })
      start += 1
    } else if (row.is === 'tie') {
      const rows = tieRows.get(row.tie.index)!
      const shows = rows.map((k) => { const other = list[k]!; return other.is === 'tie' ? other.whitening[other.component][row.component] : 0 })
      checks.push({ tie: row.tie.index, reading: tieReadings[row.component], sigma: tieSigma(row.tie.tie, row.component), rows, shows, start })
      start += rows.length ** 2
    }
  })
  return checks
}

/** One standard deviation of a component of a tie; Infinity where it is not known. */
export function tieSigma({ covariance, sigma }: Tie, component: 0 | 1 | 2): number {
  return covariance ? Math.sqrt(covariance[component][component]) : typeof sigma === 'number' ? sigma : sigma?.[component] ?? 0
}

/** One standard deviation of a reading in its own unit. On a steep sight an azimuth's is that of the angle across the line of sight. */
export function ownSigma(sight: { readonly steep: boolean, readonly cosine: number }, { reading, sigma }: SightReading): number {
  if (reading === 'distance') return sigma
  const across = reading === 'azimuth' || reading === 'backAzimuth'
  return degrees(across && !sight.steep ? sigma / sight.cosine : sigma)
}

/** The redundancy matrices of checks at a solution. */
export function redundancyOf(checks: readonly Check[], rows: Rows, cofactors: BlockMatrix): Redundancy {
  const last = checks.at(-1)
  const redundancy = new Float64Array(last ? last.start + last.rows.length ** 2 : 0)
  for (const { rows: own, start } of checks) {
    for (let a = 0; a < own.length; a++) {
      for (let b = 0; b < own.length; b++) redundancy[start + own.length * a + b] = (a === b ? 1 : 0) - rowCovariance(rows, cofactors, own[a]!, own[b]!)
    }
  }
  return redundancy
}

/** sᵀ R s: the squared standardized residual that an error of one unit would cause on its own. */
export function power({ shows, start }: Check, redundancy: Redundancy): number {
  const n = shows.length
  let sum = 0
  for (let a = 0; a < n; a++) for (let b = 0; b < n; b++) sum += shows[a]! * redundancy[start + n * a + b]! * shows[b]!
  return sum
}

/** The share of an error in the reading that shows, 0 to 1: its redundancy number. */
export const controlled = (check: Check, redundancy: Redundancy): number => Math.min(1, Math.max(0, power(check, redundancy) / squared(check)))

/** sᵀ s */
export function squared({ shows }: Check): number {
  let sum = 0
  for (let k = 0; k < shows.length; k++) sum += shows[k]! ** 2
  return sum
}

/** sᵀ v */
export function pull({ rows, shows }: Check, residual: Float64Array): number {
  let sum = 0
  for (let k = 0; k < rows.length; k++) sum += shows[k]! * residual[rows[k]!]!
  return sum
}

/** Less redundancy than this is rounding: nothing checks the reading. */
export const leastRedundancy = 1e-6
