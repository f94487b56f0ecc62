import type { Sight } from './sight.ts'
import type { Solution } from './solve-network.ts'
import type { BlockMatrix } from '../sparse/block-cholesky.ts'
import type { Covariance3 } from '../matrix3.ts'
import type { Enu } from '../../core/index.ts'
import { choleskyInPlace, DegenerateError, forwardSolve } from '../../core/index.ts'
import { apply3, dot3, map3 } from '../matrix3.ts'
import { legCovariance } from './cofactors.ts'
import { leastRedundancy } from './checks.ts'
import { reach } from './equations.ts'
import { see } from './see.ts'

/** A reading in use of one shot: its row, and its place in the sight. */
interface Used { readonly row: number, readonly at: number }

/**
 * The one shot, and in it the fewest readings, that explain most of a gross disagreement.
 *
 * For each shot in turn: where would the rest of the network put its far end, and which of its readings then do not fit? Readings are
 * compared with that place as they are, not about the adjusted points, so that an azimuth may be any angle off. Each reading set aside
 * must explain more than `critical` squared of the sum of squares.
 * @param solution  the linear solution of the readings not yet set aside
 * @returns rows to set aside; undefined when no shot explains anything
 */
export function explainBest(solution: Solution, cofactors: BlockMatrix, silenced: ReadonlySet<number>, critical: number): number[] | undefined {
  const { problem: { model, blockOf }, list, rows, state } = solution
  const used = model.shots.map((): Used[] => [])
  list.forEach((row, i) => { if (row.is === 'reading' && !silenced.has(i)) used[row.shot]!.push({ row: i, at: row.at }) })
  let best: number[] | undefined
  let most = 0
  model.shots.forEach((shot, s) => {
    const own = used[s]!
    const size = own.reduce((sum, { row }) => sum + rows.residual[row]! ** 2, 0)
    if (size < 1) return // fits
    const without = placeWithout(rows.j, rows.residual, own, reach(state, shot), legCovariance(cofactors, blockOf[shot.from]!, blockOf[shot.to]!))
    if (!without) return
    for (const suspects of hypotheses(own, shot.sight)) {
      const kept = own.filter(reading => !suspects.includes(reading))
      const gain = without.cost - costAt(shot.sight, kept, without) - suspects.length * critical ** 2
      if (gain > most) { most = gain; best = suspects.map(({ row }) => row) }
    }
  })
  return best
}

/** The far end of a shot from all readings but its own: its place from the near end, the covariance, and what the shot's readings cost. */
interface Without { readonly d: Enu, readonly covariance: Covariance3, readonly cost: number }

/** Undefined when the rest does not place it. */
function placeWithout(j: Float64Array, residual: Float64Array, own: readonly Used[], d: Enu, q: Covariance3): Without | undefined {
  const n = own.length
  const rowOf = (k: number): Enu => { const i = 3 * own[k]!.row; return [j[i]!, j[i + 1]!, j[i + 2]!] }
  const jq = own.map((_, k) => apply3(q, rowOf(k)))
  const redundancy = Float64Array.from({ length: n * n }, (_, i) => (i % n === Math.floor(i / n) ? 1 : 0) - dot3(jq[Math.floor(i / n)]!, rowOf(i % n)))
  if (!factorWell(redundancy, n)) return undefined
  // Q without the shot = Q + (J Q)ᵀ R⁻¹ (J Q)
  const columns = [0, 1, 2].map((c) => { const b = Float64Array.from(jq, row => row[c]!); forwardSolve(redundancy, n, b); return b })
  const entry = (a: 0 | 1 | 2, b: 0 | 1 | 2): number => q[a][b] + columns[a]!.reduce((sum, x, k) => sum + x * columns[b]![k]!, 0)
  const covariance = map3(entry)
  const pull = (c: 0 | 1 | 2): number => own.reduce((sum, { row: i }, k) => sum + residual[i]! * rowOf(k)[c], 0)
  const pulled: Enu = [pull(0), pull(1), pull(2)]
  const shift = apply3(covariance, pulled)
  const cost = own.reduce((sum, { row: i }) => sum + residual[i]! ** 2, 0) + dot3(pulled, shift)
  return { d: [d[0] - shift[0], d[1] - shift[1], d[2] - shift[2]], covariance, cost }
}

/** Least sum of squares of some readings and of the place that the rest gives: rᵀ (I + J C Jᵀ)⁻¹ r, all taken at that place. */
function costAt(sight: Sight, kept: readonly Used[], { d, covariance }: Without): number {
  const n = kept.length
  if (n === 0) return 0
  const seen = kept.map(({ at }) => {
    const reading = sight.readings[at]!
    const { residual, by } = see(sight, reading, d, 'points')
    return { r: residual / reading.sigma, j: [by[0] / reading.sigma, by[1] / reading.sigma, by[2] / reading.sigma] as const }
  })
  const spread = seen.map(s => apply3(covariance, s.j))
  const total = Float64Array.from({ length: n * n }, (_, i) => (i % n === Math.floor(i / n) ? 1 : 0) + dot3(spread[Math.floor(i / n)]!, seen[i % n]!.j))
  choleskyInPlace(total, n)
  const r = Float64Array.from(seen, s => s.r)
  forwardSolve(total, n, r)
  return r.reduce((sum, x) => sum + x * x, 0)
}

/** Each reading by itself, foresight with backsight, and all. */
function hypotheses(own: readonly Used[], { readings }: Sight): Used[][] {
  const of = (...names: string[]) => own.filter(({ at }) => names.includes(readings[at]!.reading))
  const pairs = [of('azimuth', 'backAzimuth'), of('inclination', 'backInclination')].filter(pair => pair.length === 2)
  return [...own.map(reading => [reading]), ...pairs, [...own]]
}

/** Factors a redundancy matrix in place; false when it has next to no redundancy in some direction. */
function factorWell(redundancy: Float64Array, n: number): boolean {
  try {
    choleskyInPlace(redundancy, n)
  } catch (failure) {
    if (failure instanceof DegenerateError) return false
    throw failure
  }
  for (let k = 0; k < n; k++) if (redundancy[n * k + k]! ** 2 < leastRedundancy) return false
  return true
}
