import type { RowOf } from './equations.ts'
import type { Model } from './model.ts'
import type { Rows } from './rows.ts'
import type { ShotReading, TieReading } from './types.ts'
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
}

const tieReadings = ['east', 'north', 'up'] as const

/** Every reading in use that can be tested, in the order of the input. */
export function listChecks(model: Model, list: readonly RowOf[]): Check[] {
  const tieRows = new Map<number, number[]>()
  list.forEach((row, i) => { if (row.is === 'tie') tieRows.set(row.tie.index, [...tieRows.get(row.tie.index) ?? [], i]) })
  return list.flatMap((row, i): Check[] => {
    if (row.is === 'reading') {
      const reading = model.shots[row.shot]!.sight.readings[row.at]!
      const sigma = ownSigma(model.shots[row.shot]!.sight, reading)
      return [{ shot: row.shot, reading: reading.reading, sigma, rows: [i], shows: [reading.sign / sigma] }]
    }
    if (row.is !== 'tie') return []
    const rows = tieRows.get(row.tie.index)!
    const shows = rows.map((k) => { const other = list[k]!; return other.is === 'tie' ? other.whitening[other.component][row.component] : 0 })
    const { covariance, sigma } = row.tie.tie
    const own = covariance ? Math.sqrt(covariance[row.component][row.component]) : typeof sigma === 'number' ? sigma : sigma![row.component]
    return [{ tie: row.tie.index, reading: tieReadings[row.component], sigma: own, rows, shows }]
  })
}

/** One standard deviation of a reading in its own unit. On a steep sight an azimuth's is that of the angle across the line of sight. */
export function ownSigma(sight: { readonly steep: boolean, readonly cosine: number }, { reading, sigma }: SightReading): number {
  if (reading === 'distance') return sigma
  const across = reading === 'azimuth' || reading === 'backAzimuth'
  return degrees(across && !sight.steep ? sigma / sight.cosine : sigma)
}

/** The redundancy matrix R of a check's own rows, row-major: how residuals answer to errors. */
export function ownRedundancy({ rows: own }: Check, rows: Rows, cofactors: BlockMatrix): Float64Array {
  return Float64Array.from(own.flatMap(a => own.map(b => (a === b ? 1 : 0) - rowCovariance(rows, cofactors, a, b))))
}

/** sᵀ R s: the squared standardized residual that an error of one unit would cause on its own. */
export function power({ shows }: Check, redundancy: Float64Array): number {
  const n = shows.length
  let sum = 0
  for (let a = 0; a < n; a++) for (let b = 0; b < n; b++) sum += shows[a]! * redundancy[n * a + b]! * shows[b]!
  return sum
}

/** The share of an error in the reading that shows, 0 to 1: its redundancy number. */
export const controlled = (check: Check, redundancy: Float64Array): number => Math.min(1, Math.max(0, power(check, redundancy) / squared(check)))

/** sᵀ s */
export const squared = ({ shows }: Check): number => shows.reduce((sum, s) => sum + s * s, 0)

/** sᵀ v */
export const pull = ({ rows, shows }: Check, residual: Float64Array): number => rows.reduce((sum, row, k) => sum + shows[k]! * residual[row]!, 0)

/** Less redundancy than this is rounding: nothing checks the reading. */
export const leastRedundancy = 1e-6
