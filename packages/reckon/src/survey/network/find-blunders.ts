import type { Check, Redundancy } from './checks.ts'
import type { Problem } from './elimination-order.ts'
import type { Model } from './model.ts'
import type { Finding } from './snoop.ts'
import type { Solution } from './solve-network.ts'
import type { BlockMatrix } from '../sparse/block-cholesky.ts'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { selectedInverse } from '../sparse/selected-inverse.ts'
import { leastRedundancy, listChecks, power, redundancyOf, squared } from './checks.ts'
import { explainBest } from './explain.ts'
import { snoop } from './snoop.ts'
import { settle, solveAbout, solveAsRead } from './solve-network.ts'

export interface SnoopOptions { readonly falseAlarm: number, readonly maxSuspects: number, readonly maxIterations: number }

/** A solution with every reading tested. */
export interface Examined {
  readonly solution: Solution
  readonly cofactors: BlockMatrix
  readonly checks: readonly Check[]
  readonly redundancy: Redundancy
  readonly critical: number
  readonly findings: readonly Finding[]
}

/**
 * Blunders up to these sizes hardly bend the equations: degrees, and share of the shot's length. Beyond, the points that least squares
 * settles on are so far off that residuals about them mislead.
 */
const [straightAngle, straightShare] = [15, 0.15]

/** Rounds of looking again about points that the present suspects do not bend. They repeat after one or two. */
const mostRounds = 3

/** Shots that are looked for before the first round. */
const mostGross = 10

/**
 * Least squares over all readings, and which of them disagree.
 *
 * Where the disagreement is gross, residuals about the adjusted points mislead: a distance that is metres wrong turns the shots beside it. Then
 * the readings that explain most are set aside for a while, the rest is adjusted, and all readings are tested about those points,
 * until the same ones are named again. That chooses only where to linearise: the result is still that of all readings in use.
 */
export function adjustAndExamine(problem: Problem, options: SnoopOptions): Examined {
  const asRead = solveAsRead(problem)
  const settled = settle(problem, asRead.state, options.maxIterations)
  const plain = examine(settled, options)
  if (settled.converged && !plain.findings.some(finding => isGross(problem.model, plain.checks[finding.check]!, finding.blunder))) return plain

  let set = setAsideGross(problem, asRead, plain.critical)
  let last = plain
  for (let round = 0; round < mostRounds; round++) {
    const rest = settle(problem, solveAsRead(problem, set).state, options.maxIterations, set)
    last = examine(solveAbout(problem, rest.state), options, set)
    const named = rowsNamed(last)
    if (sameSet(named, set)) break
    set = named
  }
  return settled.converged ? { ...plain, findings: last.findings } : last
}

/** One shot after the other, the readings that explain most of what the linear solution leaves. */
function setAsideGross(problem: Problem, asRead: Solution, critical: number): Set<number> {
  const set = new Set<number>()
  let solution = asRead
  for (let shot = 0; shot < mostGross; shot++) {
    const rows = explainBest(solution, selectedInverse(solution.factor), set, critical)
    if (!rows) break
    rows.forEach(row => set.add(row))
    solution = solveAsRead(problem, set)
  }
  return set
}

function examine(solution: Solution, { falseAlarm, maxSuspects }: SnoopOptions, first: ReadonlySet<number> = new Set()): Examined {
  const cofactors = selectedInverse(solution.factor)
  const checks = listChecks(solution.problem.model, solution.list)
  const redundancy = redundancyOf(checks, solution.rows, cofactors)
  const critical = criticalW(checks, redundancy, falseAlarm)
  const findings = snoop({ checks, start: redundancy, rows: solution.rows, factor: solution.factor }, { critical, most: maxSuspects, first })
  return { solution, cofactors, checks, redundancy, critical, findings }
}

/**
 * The standardized residual beyond which a reading is named, so that a network without blunders names any with the stated chance: the level
 * of one test is that chance shared out over all readings that something checks (Šidák).
 */
function criticalW(checks: readonly Check[], redundancy: Redundancy, falseAlarm: number): number {
  const tested = checks.filter(check => power(check, redundancy) >= leastRedundancy * squared(check)).length
  const level = -Math.expm1(Math.log1p(-falseAlarm) / Math.max(1, tested))
  return -normalQuantile(level / 2, 0, 1)
}

function isGross(model: Model, { shot, reading }: Check, blunder: number): boolean {
  if (shot === undefined) return false // a tie's equations are straight
  return Math.abs(blunder) > (reading === 'distance' ? straightShare * model.shots[shot]!.sight.distance : straightAngle)
}

const rowsNamed = ({ findings, checks }: Examined): Set<number> => new Set(findings.flatMap(finding => checks[finding.check]!.rows))

const sameSet = (a: ReadonlySet<number>, b: ReadonlySet<number>): boolean => a.size === b.size && [...a].every(row => b.has(row))
