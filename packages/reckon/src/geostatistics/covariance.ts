import { radians } from '../core/index.ts'
import { fillExponential, fillGaussian, fillMatern15, fillMatern25, fillSpherical } from './covariance-loops.ts'
import type { Fill } from './covariance-loops.ts'
import { checkModel, sillOf } from './model.ts'
import type { Structure, VariogramModel } from './model.ts'

/** A structure made ready for loops: (dx, dy) goes to u = |T (dx, dy)|, distance in units of the range along each axis. */
interface Compiled { readonly fill: Fill, readonly sill: number, readonly t: Float64Array }

function fillFor(structure: Structure): Fill {
  switch (structure.type) {
    case 'spherical': return fillSpherical
    case 'gaussian': return fillGaussian
    case 'exponential': return fillExponential
    case 'matern': {
      const smoothness = structure.smoothness ?? 1.5
      return smoothness === 0.5 ? fillExponential : smoothness === 1.5 ? fillMatern15 : fillMatern25
    }
  }
}

function compile(structure: Structure): Compiled {
  const { range, ratio = 1, azimuth = 0, partialSill } = structure
  const angle = radians(azimuth)
  // A round structure keeps an untwisted T, so that an azimuth written beside ratio 1 changes not one bit of the result.
  const sin = ratio === 1 ? 0 : Math.sin(angle)
  const cos = ratio === 1 ? 1 : Math.cos(angle)
  return { fill: fillFor(structure), sill: partialSill, t: Float64Array.of(sin / range, cos / range, cos / (range * ratio), -sin / (range * ratio)) }
}

/**
 * The covariance C(h) = sill - gamma(h) of a variogram model, compiled for filling arrays.
 *
 * Two places no further apart than `coincidence` count as one place: there the covariance is the full sill. Elsewhere the nugget
 * is left out. Pass the coincidence that belongs to the scale of the data (see `Samples`); 0 asks for equal coordinates.
 * @throws InputError as `checkModel`
 */
export class Covariance {
  /** C(0): nugget plus partial sills. */
  readonly sill: number
  readonly nugget: number
  /** C(0) without the nugget: what a block sees of the field. */
  readonly structuredSill: number
  /** Beyond this distance the covariance is exactly zero; Infinity where a structure has no end. */
  readonly reach: number
  private readonly structures: readonly Compiled[]
  private readonly coincidence2: number
  private readonly one = new Float64Array(1)
  private readonly origin = new Float64Array(1)

  constructor(readonly model: VariogramModel, coincidence = 0) {
    checkModel(model)
    this.nugget = model.nugget
    this.sill = sillOf(model)
    this.structuredSill = this.sill - model.nugget
    const present = model.structures.filter(structure => structure.partialSill > 0)
    this.structures = present.map(compile)
    this.reach = present.every(structure => structure.type === 'spherical') ? Math.max(0, ...present.map(structure => structure.range)) : Infinity
    this.coincidence2 = coincidence * coincidence
  }

  /** C between two places (dx, dy) apart; the full sill where they coincide. */
  at(dx: number, dy: number): number {
    return dx * dx + dy * dy <= this.coincidence2 ? this.sill : this.structured(dx, dy)
  }

  /** C of the field without its nugget, for blocks: at distance zero the structured sill. */
  structured(dx: number, dy: number): number {
    this.fillStructured(this.one, 0, 1, this.origin, this.origin, 0, 1, -dx, -dy)
    return this.one[0]!
  }

  /** gamma between two places (dx, dy) apart. */
  gamma(dx: number, dy: number): number {
    return dx === 0 && dy === 0 ? 0 : this.sill - this.structured(dx, dy)
  }

  /**
   * out[at + stride * i] = C between (x, y) and (xs[from + i], ys[from + i]), i = 0..count-1, with the full sill where they coincide.
   */
  fill(out: Float64Array, at: number, stride: number, xs: Float64Array, ys: Float64Array, from: number, count: number, x: number, y: number): void {
    this.fillStructured(out, at, stride, xs, ys, from, count, x, y)
    if (this.nugget === 0) return
    const limit = this.coincidence2
    for (let i = 0; i < count; i++) {
      const dx = xs[from + i]! - x
      const dy = ys[from + i]! - y
      if (dx * dx + dy * dy <= limit) out[at + stride * i] = this.sill
    }
  }

  /** As `fill`, the nugget left out everywhere; times `weight`, and added to what is there when `add`. */
  fillStructured(
    out: Float64Array, at: number, stride: number, xs: Float64Array, ys: Float64Array, from: number, count: number, x: number, y: number,
    weight = 1, add = false,
  ): void {
    let adding = add
    for (const { fill, sill, t } of this.structures) {
      fill(out, at, stride, xs, ys, from, count, x, y, t[0]!, t[1]!, t[2]!, t[3]!, weight * sill, adding)
      adding = true
    }
    if (!adding) for (let i = 0; i < count; i++) out[at + stride * i] = 0
  }
}

/**
 * gamma of a model between two places (dx, dy) apart, dx along +x and dy along +y; 0 at the same place.
 * @throws InputError as `checkModel`
 */
export function variogramAt(model: VariogramModel, dx: number, dy: number): number {
  checkModel(model, true)
  if (sillOf(model) === 0) return 0
  return new Covariance(model).gamma(dx, dy)
}
