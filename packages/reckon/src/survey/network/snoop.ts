import type { Check, Redundancy } from './checks.ts'
import type { Rows } from './rows.ts'
import type { BlockFactor } from '../sparse/block-cholesky.ts'
import { leastRedundancy, power, pull, squared } from './checks.ts'
import { addRow, rowTimes } from './rows.ts'
import { solve } from '../sparse/block-cholesky.ts'

/** A check that stands out, with those that cannot be told from it. */
export interface Finding {
  readonly check: number
  readonly w: number
  /** Estimated error, in the reading's unit. */
  readonly blunder: number
  readonly alternatives: readonly { readonly check: number, readonly w: number }[]
}

/** Two readings whose standardized residuals differ by less than this many standard deviations of the difference are not told apart: 95 %, one-sided. */
const apart = 1.6449

/** Standardized residuals closer than this are equal but for rounding. */
const equal = 1e-6

export interface SnoopLimits {
  /** Standardized residuals up to this are left alone. */
  readonly critical: number
  readonly most: number
  readonly first: ReadonlySet<number>
}

/**
 * Data snooping: names the reading with the largest standardized residual above `critical`, sets it aside, and looks again. Only residuals
 * and redundancies are updated (exactly, by a rank-one step); the adjustment itself is left as it is.
 * @param first  rows that are looked at before all others, as something else speaks against them; none without cause
 * @param start  redundancies as adjusted, with every reading in use; not modified
 * Source: Baarda, A testing procedure for use in geodetic networks (1968); w and r after Ghilani, Adjustment Computations, ch. 21 (M).
 */
export function snoop(
  { checks, start, rows, factor }: { checks: readonly Check[], start: Redundancy, rows: Rows, factor: BlockFactor },
  { critical, most, first }: SnoopLimits,
): Finding[] {
  const residual = rows.residual.slice()
  const redundancy = start.slice()
  const setAside = new Set<number>()
  const steps: { column: Float64Array, power: number }[] = []
  const findings: Finding[] = []

  while (findings.length < most) {
    const w = checks.map((check, i) => {
      const own = power(check, redundancy)
      if (setAside.has(i) || own < leastRedundancy * squared(check)) return 0
      return pull(check, residual) / Math.sqrt(own)
    })
    const ahead = largest(w, critical, i => checks[i]!.rows.some(row => first.has(row)))
    const worst = ahead < 0 ? largest(w, critical, () => true) : ahead
    const named = checks[worst]
    if (!named) break
    const worstW = Math.abs(w[worst]!)

    const column = redundancyColumn(named, rows, factor, steps)
    const own = pull(named, column)
    const alternatives = w.flatMap((value, i) => {
      if (i === worst || Math.abs(value) <= critical) return []
      const correlation = Math.abs(pull(checks[i]!, column)) / Math.sqrt(own * power(checks[i]!, redundancy))
      const margin = apart * Math.sqrt(2 * Math.max(0, 1 - correlation))
      return Math.abs(value) >= worstW - margin - equal ? [{ check: i, w: value }] : []
    })
    alternatives.sort((a, b) => Math.abs(b.w) - Math.abs(a.w) || a.check - b.check)
    const blunder = pull(named, residual) / own
    findings.push({ check: worst, w: w[worst]!, blunder, alternatives })

    setAside.add(worst)
    for (let i = 0; i < rows.count; i++) residual[i]! -= column[i]! * blunder
    for (const check of checks) {
      const n = check.rows.length
      for (let a = 0; a < n; a++) {
        for (let b = 0; b < n; b++) redundancy[check.start + n * a + b]! -= column[check.rows[a]!]! * column[check.rows[b]!]! / own
      }
    }
    steps.push({ column, power: own })
  }
  return findings
}

/** Where the largest magnitude beyond a limit stands among those that count; the first of equals; -1 when none is beyond. */
function largest(values: readonly number[], limit: number, counts: (i: number) => boolean): number {
  let at = -1
  let most = limit
  values.forEach((value, i) => { if (Math.abs(value) > most + equal && counts(i)) { at = i; most = Math.abs(value) } })
  return at
}

/** R s for all rows, R being the redundancy matrix with the earlier findings set aside. */
function redundancyColumn(check: Check, rows: Rows, factor: BlockFactor, steps: readonly { column: Float64Array, power: number }[]): Float64Array {
  const right = new Float64Array(3 * factor.pattern.size)
  check.rows.forEach((row, k) => { addRow(rows, row, check.shows[k]!, right) })
  const x = solve(factor, right)
  const column = new Float64Array(rows.count)
  for (let i = 0; i < rows.count; i++) column[i] = -rowTimes(rows, i, x)
  check.rows.forEach((row, k) => { column[row]! += check.shows[k]! })
  for (const step of steps) {
    const weight = pull(check, step.column) / step.power
    for (let i = 0; i < rows.count; i++) column[i]! -= step.column[i]! * weight
  }
  return column
}
