import type { Problem } from './elimination-order.ts'
import type { RowOf, State } from './equations.ts'
import type { Rows } from './rows.ts'
import type { BlockFactor } from '../sparse/block-cholesky.ts'
import { factorize, solve } from '../sparse/block-cholesky.ts'
import { linearise, listWeak, rowsOf } from './equations.ts'
import { looseStations } from './loose.ts'
import { normalEquations, rowTimes, silence, sumOfSquares } from './rows.ts'

/** An adjusted state with the equations and the factor at it; the rows' residuals are those of the adjustment. */
export interface Solution {
  readonly problem: Problem
  readonly list: readonly RowOf[]
  readonly state: State
  readonly rows: Rows
  readonly factor: BlockFactor
  readonly converged: boolean
  readonly iterations: number
}

/** Rows that have no say, by their place in the list. */
export type Silenced = ReadonlySet<number>
const none: Silenced = new Set()

/** Points have settled when none moves by more than this share of the usual shot: a tenth of a micrometre in ten metres. */
const settledShare = 1e-8

/** A step halved more often than this leads nowhere. */
const mostHalvings = 10

/**
 * The exact solution of the linear form, each reading taken along the sight as it was read: the start of all others. Good from anywhere, and
 * even where a distance is wildly wrong, as no direction depends on the points.
 */
export function solveAsRead(problem: Problem, silenced: Silenced = none): Solution {
  const { model, blockOf, pattern } = problem
  const list = [...problem.list, ...listWeak(model)]
  const state: State = { points: new Float64Array(3 * model.names.length), errors: new Float64Array(3 * model.instruments.length) }
  model.held.forEach((point, station) => { state.points.set(point, 3 * station) })
  const rows = rowsOf(model, list, blockOf)
  linearise(model, list, state, rows, 'sight')
  silence(rows, silenced)
  const { matrix, right } = normalEquations(rows, pattern)
  return oneStep({ problem, list, state, rows, factor: factorize(matrix), converged: true, iterations: 0 }, right)
}

/** A step that is not this much shorter than the last is a slow one; after so many in a row it is not going to settle. */
const [slowShare, mostSlow] = [0.5, 4]

/**
 * Least squares by Gauss-Newton with step halving. Returns the state reached, settled or not. What nothing determines does not keep the rest
 * from settling.
 */
export function settle(problem: Problem, start: State, maxIterations: number, silenced: Silenced = none): Solution {
  const { model, list, blockOf, pattern } = problem
  const rows = rowsOf(model, list, blockOf)
  const lineariseAt = (state: State): number => {
    linearise(model, list, state, rows, 'points')
    silence(rows, silenced)
    return sumOfSquares(rows.residual)
  }
  let state = start
  let objective = lineariseAt(state)
  let normal = normalEquations(rows, pattern)
  let factor = factorize(normal.matrix)
  let converged = false
  let iterations = 0
  let last = Infinity
  let slow = 0
  while (!converged && iterations < maxIterations && slow < mostSlow) {
    iterations++
    const step = solve(factor, normal.right)
    const whole = largest(step, blockOf, looseStations(factor, rows, blockOf, model.names.length), model.names.length)
    let share = 1
    let next = moved(problem, state, step, share)
    let reached = lineariseAt(next)
    for (let halving = 0; reached > objective * (1 + 1e-12) && share * whole > settledShare * model.scale && halving < mostHalvings; halving++) {
      share /= 2
      next = moved(problem, state, step, share)
      reached = lineariseAt(next)
    }
    state = next
    objective = reached
    const size = share * whole
    converged = size <= settledShare * model.scale
    slow = size > slowShare * last ? slow + 1 : 0
    last = size
    normal = normalEquations(rows, pattern)
    factor = factorize(normal.matrix)
  }
  return { problem, list, state, rows, factor, converged, iterations }
}

/** Least squares of all readings in one linear step about given points: what is left when readings are too far off for settling. */
export function solveAbout(problem: Problem, about: State): Solution {
  const { model, list, blockOf, pattern } = problem
  const rows = rowsOf(model, list, blockOf)
  linearise(model, list, about, rows, 'points')
  const { matrix, right } = normalEquations(rows, pattern)
  return oneStep({ problem, list, state: about, rows, factor: factorize(matrix), converged: false, iterations: 1 }, right)
}

function oneStep(solution: Solution, right: Float64Array): Solution {
  const { problem, state, rows, factor } = solution
  const step = solve(factor, right)
  for (let i = 0; i < rows.count; i++) rows.residual[i]! -= rowTimes(rows, i, step)
  return { ...solution, state: moved(problem, state, step, 1) }
}

function moved({ blockOf }: Problem, { points, errors }: State, step: Float64Array, share: number): State {
  const next: State = { points: points.slice(), errors: errors.slice() }
  const stations = points.length / 3
  blockOf.forEach((block, node) => {
    if (block < 0) return
    const [target, at] = node < stations ? [next.points, 3 * node] : [next.errors, 3 * (node - stations)]
    for (let c = 0; c < 3; c++) target[at + c]! += share * step[3 * block + c]!
  })
  return next
}

function largest(step: Float64Array, blockOf: Int32Array, loose: ReadonlySet<number>, stations: number): number {
  let most = 0
  for (let node = 0; node < stations; node++) {
    const block = blockOf[node]!
    if (block < 0 || loose.has(node)) continue
    for (let c = 0; c < 3; c++) most = Math.max(most, Math.abs(step[3 * block + c]!))
  }
  return most
}
