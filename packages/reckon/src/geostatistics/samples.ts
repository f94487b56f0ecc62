import { finite, InputError } from '../core/index.ts'
import type { Sample } from './model.ts'

/** Places closer than this share of the data's diagonal are one place: far below any tape, far above rounding of grid coordinates. */
const COINCIDENCE = 1e-9

/** Samples as columns, those at one place merged. */
export interface Samples {
  readonly count: number
  readonly xs: Float64Array
  readonly ys: Float64Array
  readonly values: Float64Array
  /** Variance of the error of measurement, 0 where the value is exact. */
  readonly errors: Float64Array
  /** For each row as given: the merged sample it went into, and its share of that sample's value (shares of one sample sum to 1). */
  readonly group: Int32Array
  readonly share: Float64Array
  /** Distance below which two places are one. */
  readonly coincidence: number
}

/**
 * Takes samples apart into columns and merges those at one place (closer than 1e-9 of the data's diagonal).
 *
 * Merged value: weighted by 1 / error variance when every one has an error (this loses nothing: the estimate is the same as with
 * the samples kept apart), and the merged error variance is 1 / sum(1 / variance). When some are exact (variance 0), the plain mean
 * of the exact ones, taken as exact. Two exact values that differ at one place contradict the model, and their mean hides that:
 * give repeats their error variance.
 * @throws InputError naming `points[i][j]` or `errorVariance[i]`; when no point is given; when the lengths differ
 */
export function gatherSamples(points: readonly Sample[], errorVariance?: readonly number[]): Samples {
  if (points.length === 0) throw new InputError('points', [], 'at least one sample')
  return mergeSamples(points, errorVariance, coincidenceOf(points))
}

/** As `gatherSamples`, with a coincidence of the caller's own; no points give no samples. */
export function mergeSamples(points: readonly Sample[], errorVariance: readonly number[] | undefined, coincidence: number): Samples {
  points.forEach((point, i) => {
    for (let j = 0; j < 3; j++) if (!Number.isFinite(point[j])) finite(point[j]!, `points[${i}][${j}]`)
  })
  if (errorVariance !== undefined) checkErrors(errorVariance, points.length)
  const group = groupPlaces(points, coincidence)
  const count = group.reduce((most, g) => Math.max(most, g + 1), 0)
  const merged = {
    count, xs: new Float64Array(count), ys: new Float64Array(count), values: new Float64Array(count), errors: new Float64Array(count),
    group, share: new Float64Array(points.length), coincidence,
  }
  const members = Array.from({ length: count }, (): number[] => [])
  group.forEach((g, i) => members[g]!.push(i))
  members.forEach((rows, g) => mergeInto(merged, g, rows, points, errorVariance))
  return merged
}

function mergeInto(merged: Samples, g: number, rows: readonly number[], points: readonly Sample[], errorVariance: readonly number[] | undefined): void {
  const first = points[rows[0]!]!
  merged.xs[g] = first[0]
  merged.ys[g] = first[1]
  const errors = rows.map(row => errorVariance?.[row] ?? 0)
  const exact = errors.some(error => error === 0)
  const weights = errors.map(error => exact ? (error === 0 ? 1 : 0) : 1 / error)
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  rows.forEach((row, k) => { merged.share[row] = weights[k]! / total })
  merged.values[g] = rows.length === 1 ? first[2] : rows.reduce((sum, row) => sum + merged.share[row]! * points[row]![2], 0)
  merged.errors[g] = exact ? 0 : rows.length === 1 ? errors[0]! : 1 / total
}

function checkErrors(errorVariance: readonly number[], count: number): void {
  if (errorVariance.length !== count) throw new InputError('errorVariance', errorVariance.length, `one variance per point, ${count} in all`)
  errorVariance.forEach((error, i) => {
    if (!(error >= 0 && Number.isFinite(error))) throw new InputError(`errorVariance[${i}]`, error, 'a variance at or above zero')
  })
}

/** The distance below which two of these places are one. */
export function coincidenceOf(places: readonly (readonly [x: number, y: number, ...rest: number[]])[]): number {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of places) {
    west = Math.min(west, x)
    east = Math.max(east, x)
    south = Math.min(south, y)
    north = Math.max(north, y)
  }
  return places.length === 0 ? 0 : COINCIDENCE * Math.hypot(east - west, north - south)
}

/** For each row the number of its place; places are numbered in order of first appearance. */
export function groupPlaces(points: readonly (readonly [x: number, y: number, ...rest: number[]])[], coincidence: number): Int32Array {
  const order = points.map((_, i) => i).sort((a, b) => points[a]![0] - points[b]![0] || points[a]![1] - points[b]![1] || a - b)
  const leader = Int32Array.from(points, (_, i) => i)
  const limit = coincidence * coincidence
  for (let a = 0; a < order.length; a++) {
    const i = order[a]!
    if (leader[i] !== i) continue
    for (let b = a + 1; b < order.length; b++) {
      const j = order[b]!
      const dx = points[j]![0] - points[i]![0]
      if (dx > coincidence) break
      const dy = points[j]![1] - points[i]![1]
      if (leader[j] === j && dx * dx + dy * dy <= limit) leader[j] = i
    }
  }
  // A place takes the number of its earliest row, so that unmerged data keep their order.
  const number = new Map<number, number>()
  return Int32Array.from(points, (_, i) => {
    const lead = leader[i]!
    if (!number.has(lead)) number.set(lead, number.size)
    return number.get(lead)!
  })
}
