import type { State } from './equations.ts'
import type { Model } from './model.ts'
import type { Rows } from './rows.ts'
import type { BlockFactor } from '../sparse/block-cholesky.ts'
import type { BlockPattern } from '../sparse/block-pattern.ts'
import type { Enu } from '../../core/index.ts'
import type { RowOf } from './equations.ts'
import { vectorErrors } from './sight.ts'
import { linearise, listDatum, listRows, rowsOf, setDatum } from './equations.ts'
import { adjacencyOf, emptyRows, normalEquations, sumOfSquares } from './rows.ts'
import { blockPattern } from '../sparse/block-pattern.ts'
import { factorize, solve } from '../sparse/block-cholesky.ts'
import { minimumDegree } from '../sparse/minimum-degree.ts'

/** The adjusted state with the equations and the factor at it. */
export interface Solution {
  readonly state: State
  readonly list: readonly RowOf[]
  readonly rows: Rows
  readonly factor: BlockFactor
  /** Block of each station and, after them, of each set of instruments; -1 for a held station. */
  readonly blockOf: Int32Array
  readonly converged: boolean
  readonly iterations: number
}

/** Points have settled when none moves by more than this share of the usual shot: a tenth of a micrometre in ten metres. */
const settledShare = 1e-8

/**
 * Least squares by Gauss-Newton with step halving, from the exact solution of the linear form (each shot one vector).
 * @returns the state reached, settled or not; nothing is thrown for a bad fit
 */
export function solveNetwork(model: Model, maxIterations: number): Solution {
  const list = listRows(model)
  const { blockOf, pattern } = eliminationOrder(model, list)
  const rows = rowsOf(model, list, blockOf)
  let state = startState(model, blockOf, pattern)
  linearise(model, list, state, rows)
  let objective = sumOfSquares(rows.residual)
  let converged = false
  let iterations = 0
  let normal = normalEquations(rows, pattern)
  let factor = factorize(normal.matrix)
  while (!converged && iterations < maxIterations) {
    iterations++
    const step = solve(factor, normal.right)
    let size = largest(step, blockOf, model.names.length)
    let next = moved(state, step, 1, blockOf)
    linearise(model, list, next, rows)
    let reached = sumOfSquares(rows.residual)
    for (let share = 0.5; reached > objective * (1 + 1e-12) && size > settledShare * model.scale && share > 1e-3; share /= 2) {
      next = moved(state, step, share, blockOf)
      size /= 2
      linearise(model, list, next, rows)
      reached = sumOfSquares(rows.residual)
    }
    state = next
    objective = reached
    converged = size <= settledShare * model.scale
    normal = normalEquations(rows, pattern)
    factor = factorize(normal.matrix)
  }
  return { state, list, rows, factor, blockOf, converged, iterations }
}

function eliminationOrder(model: Model, list: readonly RowOf[]): { blockOf: Int32Array, pattern: BlockPattern } {
  const stations = model.names.length
  const blockOf = new Int32Array(stations + model.instruments.length).fill(-1)
  const free: number[] = []
  for (let i = 0; i < stations; i++) if (!model.held.has(i)) { blockOf[i] = free.length; free.push(i) }
  const sets = model.instruments.map((_, i) => stations + i)
  sets.forEach((node, i) => { blockOf[node] = free.length + i })
  const adjacency = adjacencyOf(rowsOf(model, list, blockOf), free.length + sets.length)
  // A set of instruments touches every one of its stations; it goes last, where that costs one block a station.
  const order = minimumDegree(adjacency.slice(0, free.length).map(near => near.filter(other => other < free.length)))
  const position = Int32Array.from({ length: free.length + sets.length }, (_, i) => i)
  order.forEach((node, place) => { position[node] = place })
  const permuted: number[][] = new Array<number[]>(adjacency.length)
  adjacency.forEach((near, node) => { permuted[position[node]!] = near.map(other => position[other]!) })
  for (let i = 0; i < blockOf.length; i++) if (blockOf[i]! >= 0) blockOf[i] = position[blockOf[i]!]!
  return { blockOf, pattern: blockPattern(permuted) }
}

/** Each shot as one vector with errors along, across and square to the sight: linear, so solved in one step from anywhere. */
function startState(model: Model, blockOf: Int32Array, pattern: BlockPattern): State {
  const state: State = { points: new Float64Array(3 * model.names.length), errors: new Float64Array(3 * model.instruments.length) }
  model.held.forEach((point, station) => { state.points.set(point, 3 * station) })
  const shots = model.shots.filter(shot => shot.active)
  const datum = listDatum(model)
  const rows = emptyRows(3 * shots.length + datum.length)
  shots.forEach((shot, s) => {
    const { sight } = shot
    const error = vectorErrors(sight).map(e => e ?? sight.distance) // what no reading in use gives is taken as very loose
    const held = (node: number): Enu => model.held.get(node) ?? [0, 0, 0]
    const [f, t] = [held(shot.from), held(shot.to)]
    const axes = [sight.along, sight.across, sight.rise]
    axes.forEach((axis, c) => {
      const i = 3 * s + c
      rows.from[i] = blockOf[shot.from]!
      rows.to[i] = blockOf[shot.to]!
      const known = axis[0] * (t[0] - f[0]) + axis[1] * (t[1] - f[1]) + axis[2] * (t[2] - f[2])
      rows.j.set(axis.map(x => x / error[c]!), 3 * i)
      rows.residual[i] = ((c === 0 ? sight.distance : 0) - known) / error[c]!
    })
  })
  const offset = 3 * shots.length
  const touched = rowsOf(model, datum, blockOf)
  datum.forEach((row, i) => {
    rows.to[offset + i] = touched.to[i]!
    rows.shared[offset + i] = touched.shared[i]!
    if (row.is !== 'reading' && row.is !== 'plumb') setDatum(model, row, state, rows, offset + i)
  })
  const { matrix, right } = normalEquations(rows, pattern)
  return moved(state, solve(factorize(matrix), right), 1, blockOf)
}

function moved({ points, errors }: State, step: Float64Array, share: number, blockOf: Int32Array): State {
  const next: State = { points: points.slice(), errors: errors.slice() }
  const stations = points.length / 3
  blockOf.forEach((block, node) => {
    if (block < 0) return
    const [target, at] = node < stations ? [next.points, 3 * node] : [next.errors, 3 * (node - stations)]
    for (let c = 0; c < 3; c++) target[at + c]! += share * step[3 * block + c]!
  })
  return next
}

function largest(step: Float64Array, blockOf: Int32Array, stations: number): number {
  let most = 0
  for (let node = 0; node < stations; node++) {
    const block = blockOf[node]!
    if (block < 0) continue
    for (let c = 0; c < 3; c++) most = Math.max(most, Math.abs(step[3 * block + c]!))
  }
  return most
}
