import { finite, InputError } from '../core/index.ts'
import type { Point2 } from './model.ts'
import type { Samples } from './samples.ts'

/** Other things known at every sample and every target, that the mean follows linearly: one row per sample and per target. */
export interface Covariates {
  readonly points: readonly (readonly number[])[]
  readonly targets: readonly (readonly number[])[]
}

/** The mean of the field as a sum of known functions with unknown coefficients; none for simple kriging, where it is known. */
export interface Drift {
  readonly size: number
  /** One column per function: its value at each (merged) sample. */
  readonly columns: readonly Float64Array[]
  /** Writes the functions' values at target `index`, which lies at (x, y), to `out`. */
  readonly at: (index: number, x: number, y: number, out: Float64Array) => void
}

export type KrigingKind = 'simple' | 'ordinary' | 'universal'

/**
 * simple: nothing; ordinary: a constant; universal: a constant and either the two coordinates or the given covariates.
 * Each function is centred and scaled over the samples, so that the system stays well conditioned in grid coordinates.
 * @throws InputError when covariates are uneven, not finite, or do not match the rows given
 */
export function driftOf(kind: KrigingKind, samples: Samples, targetCount: number, covariates?: Covariates): Drift {
  if (kind === 'simple') return { size: 0, columns: [], at: () => {} }
  const constant = new Float64Array(samples.count).fill(1)
  if (kind === 'ordinary') return { size: 1, columns: [constant], at: (_, _x, _y, out) => { out[0] = 1 } }
  if (covariates !== undefined) return covariateDrift(constant, samples, targetCount, covariates)
  const [x, y] = [scaled(samples.xs), scaled(samples.ys)]
  return {
    size: 3,
    columns: [constant, x.column, y.column],
    at: (_, tx, ty, out) => {
      out[0] = 1
      out[1] = x.of(tx)
      out[2] = y.of(ty)
    },
  }
}

function covariateDrift(constant: Float64Array, samples: Samples, targetCount: number, { points, targets }: Covariates): Drift {
  const width = points[0]?.length ?? 0
  const check = (rows: readonly (readonly number[])[], field: string, count: number) => {
    if (rows.length !== count) throw new InputError(`covariates.${field}`, rows.length, `${count} rows`)
    rows.forEach((row, i) => {
      if (row.length !== width || width === 0) throw new InputError(`covariates.${field}[${i}]`, row.length, 'the same number of covariates (one or more) in every row')
      row.forEach((value, j) => finite(value, `covariates.${field}[${i}][${j}]`))
    })
  }
  check(points, 'points', samples.group.length)
  check(targets, 'targets', targetCount)
  const functions = Array.from({ length: width }, (_, j) => {
    const raw = new Float64Array(samples.count)
    samples.group.forEach((g, row) => { raw[g]! += samples.share[row]! * points[row]![j]! })
    return scaled(raw)
  })
  return {
    size: 1 + width,
    columns: [constant, ...functions.map(f => f.column)],
    at: (index, _x, _y, out) => {
      out[0] = 1
      functions.forEach((f, j) => { out[1 + j] = f.of(targets[index]![j]!) })
    },
  }
}

function scaled(raw: Float64Array): { column: Float64Array, of: (value: number) => number } {
  let [low, high] = [Infinity, -Infinity]
  for (const value of raw) {
    low = Math.min(low, value)
    high = Math.max(high, value)
  }
  const centre = (low + high) / 2
  const half = (high - low) / 2
  const of = (value: number) => half > 0 ? (value - centre) / half : value - centre
  return { column: raw.map(of), of }
}

/** Targets as columns. @throws InputError naming `targets[i][j]` */
export function gatherTargets(targets: readonly Point2[]): { readonly count: number, readonly xs: Float64Array, readonly ys: Float64Array } {
  const count = targets.length
  const xs = new Float64Array(count)
  const ys = new Float64Array(count)
  for (let i = 0; i < count; i++) {
    const [x, y] = targets[i]!
    // Names are only made for what is refused: there may be a hundred thousand.
    if (!Number.isFinite(x)) finite(x, `targets[${i}][0]`)
    if (!Number.isFinite(y)) finite(y, `targets[${i}][1]`)
    xs[i] = x
    ys[i] = y
  }
  return { count, xs, ys }
}
