import type { Model, ModelShot, ModelTie } from './model.ts'
import type { Rows } from './rows.ts'
import type { Line, Seen } from './see.ts'
import type { SightReading } from './sight.ts'
import type { Enu } from '../../core/index.ts'
import type { Covariance3 } from '../matrix3.ts'
import { cholesky3, dot3, invertLower3, map3 } from '../matrix3.ts'
import { emptyRows } from './rows.ts'
import { see, seePlumb, seeWeak } from './see.ts'
import { vectorErrors } from './sight.ts'

type Component = 0 | 1 | 2

/** What one row of the equations stands for. */
export type RowOf =
  /** A shot's reading, by its place in the sight's list. */
  | { readonly is: 'reading', readonly shot: number, readonly at: number }
  | { readonly is: 'plumb', readonly shot: number }
  /** Only in a first solution: what no reading in use gives of a shot, taken very loosely as read. */
  | { readonly is: 'weak', readonly shot: number, readonly axis: 'along' | 'across' | 'rise' }
  /** One row of the whitened tie: inverse of the Cholesky factor of its covariance times the offsets. */
  | { readonly is: 'tie', readonly tie: ModelTie, readonly component: Component, readonly whitening: Covariance3 }
  | { readonly is: 'prior', readonly instruments: number, readonly component: Component }
  /** A component that no tie gives, kept where the part's first tie has it. */
  | { readonly is: 'assumed', readonly tie: ModelTie, readonly component: Component }

/** Points by station and errors by set of instruments, three numbers each. */
export interface State { readonly points: Float64Array, readonly errors: Float64Array }

const components = [0, 1, 2] as const

/** A component that no tie gives is held this close, as a share of the usual shot: far closer than any reading. */
const heldShare = 1e-6

/** Every reading in use, tie, prior and assumed component, in the order of the input. */
export function listRows(model: Model): RowOf[] {
  const readings = model.shots.flatMap(({ sight }, shot): RowOf[] => [
    ...sight.readings.flatMap((reading, at): RowOf[] => reading.leftOut ? [] : [{ is: 'reading', shot, at }]),
    ...sight.plumb !== undefined && model.shots[shot]!.active ? [{ is: 'plumb' as const, shot }] : [],
  ])
  return [...readings, ...listDatum(model)]
}

/** Loose rows for what no reading in use gives, so that a first solution exists. */
export function listWeak(model: Model): RowOf[] {
  return model.shots.flatMap(({ sight, active }, shot) => {
    if (!active) return []
    const [along, across, rise] = vectorErrors(sight)
    const lacking = [along === undefined && 'along', across === undefined && 'across', rise === undefined && 'rise'] as const
    return lacking.flatMap((axis): RowOf[] => axis ? [{ is: 'weak', shot, axis }] : [])
  })
}

/** The rows that are not readings of shots: ties, priors and assumed components. */
function listDatum(model: Model): RowOf[] {
  const ties = model.ties.filter(tie => !tie.held && !tie.tie.leaveOut).flatMap((tie): RowOf[] => {
    const whitening = whiteningOf(tie)
    return components.filter(c => whitening[c][c] > 0).map(component => ({ is: 'tie', tie, component, whitening }))
  })
  const priors = model.priors.flatMap((_, instruments) => components.map((component): RowOf => ({ is: 'prior', instruments, component })))
  const assumed = model.parts.flatMap(part => part.assumed.map((name): RowOf => ({ is: 'assumed', tie: part.firstTie!, component: name === 'east' ? 0 : name === 'north' ? 1 : 2 })))
  return [...ties, ...priors, ...assumed]
}

/** The inverse of the lower Cholesky factor of a tie's covariance; a row of zeros for a component that is not known. */
function whiteningOf({ tie: { covariance, sigma } }: ModelTie): Covariance3 {
  if (covariance) return invertLower3(cholesky3(covariance)!)
  return map3((i, j) => i === j ? 1 / (typeof sigma === 'number' ? sigma : sigma![i]) : 0)
}

/** Rows that touch the right blocks; coefficients are still to be filled in. `blockOf` gives -1 for a held station. */
export function rowsOf(model: Model, list: readonly RowOf[], blockOf: Int32Array): Rows {
  const rows = emptyRows(list.length)
  const stations = model.names.length
  list.forEach((row, i) => {
    if (isShot(row)) {
      const shot = model.shots[row.shot]!
      rows.from[i] = blockOf[shot.from]!
      rows.to[i] = blockOf[shot.to]!
      if (shot.instruments >= 0) rows.shared[i] = blockOf[stations + shot.instruments]!
    } else if (row.is === 'prior') rows.shared[i] = blockOf[stations + row.instruments]!
    else rows.to[i] = blockOf[row.tie.station]!
  })
  return rows
}

/** Fills in coefficients and residuals at a state. */
export function linearise(model: Model, list: readonly RowOf[], state: State, rows: Rows, line: Line): void {
  list.forEach((row, i) => {
    if (isShot(row)) setShot(model, row, state, rows, i, line)
    else setDatum(model, row, state, rows, i)
  })
}

/** `to` minus `from` at a state. */
export function reach({ points }: State, { from, to }: ModelShot): Enu {
  const [f, t] = [3 * from, 3 * to]
  return [points[t]! - points[f]!, points[t + 1]! - points[f + 1]!, points[t + 2]! - points[f + 2]!]
}

type ShotRow = RowOf & { readonly is: 'reading' | 'plumb' | 'weak' }
const isShot = (row: RowOf): row is ShotRow => row.is === 'reading' || row.is === 'plumb' || row.is === 'weak'

function setShot(model: Model, row: ShotRow, state: State, rows: Rows, i: number, line: Line): void {
  const shot = model.shots[row.shot]!
  const { sight } = shot
  if (row.is === 'plumb') { setRow(rows, i, seePlumb(sight, reach(state, shot)), sight.plumb!); return }
  if (row.is === 'weak') { setRow(rows, i, seeWeak(sight, row.axis, reach(state, shot)), sight.distance); return }
  const reading = sight.readings[row.at]!
  const { seen, component } = seeCorrected(model, shot, reading, state, line)
  setRow(rows, i, seen, reading.sigma)
  if (component !== undefined) rows.g[3 * i + component] = seen.shared / reading.sigma
}

export interface Corrected { readonly seen: Seen, readonly component?: Component }

/** A reading against the present points and the present errors of its instruments; `component` is the one of those errors that enters it. */
export function seeCorrected(model: Model, shot: ModelShot, reading: SightReading, state: State, line: Line): Corrected {
  const seen = see(shot.sight, reading, reach(state, shot), line)
  if (shot.instruments < 0) return { seen }
  const component = sharedComponent(reading.reading)
  if (model.priors[shot.instruments]![component] === 0) return { seen }
  return { seen: { ...seen, residual: seen.residual - seen.shared * state.errors[3 * shot.instruments + component]! }, component }
}

/** Which of a set of instruments' errors enters a reading. */
const sharedComponent = (reading: string): Component => reading === 'distance' ? 2 : reading === 'azimuth' || reading === 'backAzimuth' ? 0 : 1

function setRow(rows: Rows, i: number, { residual, by }: Seen, sigma: number): void {
  rows.j[3 * i] = by[0] / sigma
  rows.j[3 * i + 1] = by[1] / sigma
  rows.j[3 * i + 2] = by[2] / sigma
  rows.residual[i] = residual / sigma
}

/** Fills in a tie, a prior or an assumed component. */
function setDatum(model: Model, row: RowOf & { is: 'tie' | 'prior' | 'assumed' }, { points, errors }: State, rows: Rows, i: number): void {
  const k = 3 * i
  if (row.is === 'prior') {
    const prior = model.priors[row.instruments]![row.component]
    const weight = prior > 0 ? 1 / prior : 1 // an error that the set does not have stays at zero
    rows.g[k + row.component] = weight
    rows.residual[i] = -errors[3 * row.instruments + row.component]! * weight
    return
  }
  const at = 3 * row.tie.station
  const { point } = row.tie.tie
  const { origin } = model
  const off: Enu = [point[0] - origin[0] - points[at]!, point[1] - origin[1] - points[at + 1]!, point[2] - origin[2] - points[at + 2]!]
  if (row.is === 'tie') {
    rows.j.set(row.whitening[row.component], k)
    rows.residual[i] = dot3(row.whitening[row.component], off)
  } else {
    const weight = 1 / (heldShare * model.scale)
    rows.j[k + row.component] = weight
    rows.residual[i] = weight * off[row.component]
  }
}
