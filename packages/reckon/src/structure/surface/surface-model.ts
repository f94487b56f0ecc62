import { backwardSolve, choleskyInPlace, forwardSolve } from '../../core/index.ts'

/** A place on a vein in its own coordinates, metres: `off` from the first plane, with the variance of that. */
export interface SurfacePoint { readonly along: number, readonly down: number, readonly off: number, readonly variance: number }
/** How a vein leans there beside the first plane: rise of `off` a metre along and down, with the variance of each. */
export interface SurfaceSlope {
  readonly along: number
  readonly down: number
  readonly slopeAlong: number
  readonly slopeDown: number
  readonly variance: number
}
export interface SurfaceData { readonly points: readonly SurfacePoint[], readonly slopes: readonly SurfaceSlope[] }

/** A line across the vein: places with cos(turn) along + sin(turn) down greater than `at` lie past it. Degrees, metres. */
export interface BreakLine { readonly turn: number, readonly at: number }
export type SurfaceKind = 'plane' | 'bend' | 'step' | 'curve'
export interface SurfaceModel { readonly kind: SurfaceKind, readonly line?: BreakLine }

/** A surface off = f(along, down) with its coefficients and weighted misfit. */
export interface FittedSurface extends SurfaceModel {
  readonly coefficients: readonly number[]
  readonly misfit: number
}

type Row = readonly number[]
export const across = ({ turn }: BreakLine, along: number, down: number): number =>
  Math.cos(turn * Math.PI / 180) * along + Math.sin(turn * Math.PI / 180) * down

/** Value and the two slopes of each basis function at a place. */
function rowsAt({ kind, line }: SurfaceModel, along: number, down: number): readonly [Row, Row, Row] {
  const plane: [number[], number[], number[]] = [[1, along, down], [0, 1, 0], [0, 0, 1]]
  if (kind === 'curve') {
    plane[0].push(along * along / 2, along * down, down * down / 2)
    plane[1].push(along, down, 0)
    plane[2].push(0, along, down)
  } else if (line) {
    const past = across(line, along, down) - line.at
    const [c, s] = [Math.cos(line.turn * Math.PI / 180), Math.sin(line.turn * Math.PI / 180)]
    plane[0].push(kind === 'bend' ? Math.max(0, past) : past > 0 ? 1 : 0)
    plane[1].push(kind === 'bend' && past > 0 ? c : 0)
    plane[2].push(kind === 'bend' && past > 0 ? s : 0)
  }
  return plane
}

const times = (row: Row, c: readonly number[]): number => row.reduce((sum, value, i) => sum + value * c[i]!, 0)

export interface SurfaceThere { readonly off: number, readonly slopeAlong: number, readonly slopeDown: number }

/** Value and slopes of a fitted surface. */
export function surfaceAt(surface: FittedSurface, along: number, down: number): SurfaceThere {
  const [value, a, d] = rowsAt(surface, along, down)
  return { off: times(value, surface.coefficients), slopeAlong: times(a, surface.coefficients), slopeDown: times(d, surface.coefficients) }
}

/** Sum of squared errors of a surface over its own standard deviations. */
export const misfitOf = (surface: FittedSurface, { points, slopes }: SurfaceData): number =>
  points.reduce((sum, p) => sum + (p.off - surfaceAt(surface, p.along, p.down).off) ** 2 / p.variance, 0) +
  slopes.reduce((sum, s) => {
    const at = surfaceAt(surface, s.along, s.down)
    return sum + ((s.slopeAlong - at.slopeAlong) ** 2 + (s.slopeDown - at.slopeDown) ** 2) / s.variance
  }, 0)

/** Weighted least squares; undefined when the data do not settle every coefficient. */
export function fitSurface(model: SurfaceModel, data: SurfaceData): FittedSurface | undefined {
  const size = model.kind === 'plane' ? 3 : model.kind === 'curve' ? 6 : 4
  const a = new Float64Array(size * size)
  const b = new Float64Array(size)
  const take = (row: Row, value: number, variance: number) => {
    for (let i = 0; i < size; i++) {
      const w = row[i]! / variance
      if (w === 0) continue
      b[i]! += w * value
      for (let k = 0; k <= i; k++) a[i * size + k]! += w * row[k]!
    }
  }
  for (const p of data.points) take(rowsAt(model, p.along, p.down)[0], p.off, p.variance)
  for (const s of data.slopes) {
    const [, along, down] = rowsAt(model, s.along, s.down)
    take(along, s.slopeAlong, s.variance)
    take(down, s.slopeDown, s.variance)
  }
  // Scaled so that every diagonal is 1: metres and metres squared then stand beside each other.
  const scale = Array.from({ length: size }, (_, i) => Math.sqrt(a[i * size + i]!))
  if (scale.some(s => !(s > 0))) return undefined
  for (let i = 0; i < size; i++) {
    b[i]! /= scale[i]!
    for (let k = 0; k <= i; k++) { a[i * size + k]! /= scale[i]! * scale[k]!; a[k * size + i] = a[i * size + k]! }
  }
  try {
    choleskyInPlace(a, size)
  } catch {
    return undefined
  }
  if (Array.from({ length: size }, (_, i) => a[i * size + i]!).some(d => !(d > 1e-5))) return undefined
  forwardSolve(a, size, b)
  backwardSolve(a, size, b)
  const surface = { ...model, coefficients: Array.from(b, (value, i) => value / scale[i]!), misfit: 0 }
  return { ...surface, misfit: misfitOf(surface, data) }
}
