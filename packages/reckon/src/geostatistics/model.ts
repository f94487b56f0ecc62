import { InputError } from '../core/index.ts'
import type { Degrees } from '../core/index.ts'

/** A place in the plane, any length unit; for a vein usually [along, down] of the vein's own coordinates. */
export type Point2 = readonly [x: number, y: number]
/** A measured value at a place: [x, y, value]. */
export type Sample = readonly [x: number, y: number, value: number]

export type StructureType = 'spherical' | 'exponential' | 'gaussian' | 'matern'

/**
 * One structure of a variogram model. With u = h / range (h the distance, see anisotropy below), gamma / partialSill is
 *
 * - spherical    1.5 u - 0.5 u^3 for u < 1, else 1
 * - exponential  1 - exp(-u)
 * - gaussian     1 - exp(-u^2)
 * - matern       1 - exp(-u) {1 | 1 + u | 1 + u + u^2/3} for smoothness {0.5 | 1.5 | 2.5} (1.5 unless given)
 *
 * So `range` is the parameter a, not the distance of 95 % of the sill.
 *
 * Geometric anisotropy: `azimuth` of the major axis, degrees clockwise from +y, along which `range` holds; across it the range
 * is `range * ratio`, ratio in (0, 1].
 */
export interface Structure {
  readonly type: StructureType
  readonly partialSill: number
  readonly range: number
  readonly smoothness?: 0.5 | 1.5 | 2.5
  readonly azimuth?: Degrees
  readonly ratio?: number
}

/**
 * A nested variogram model: gamma(0) = 0 and, for h > 0, nugget + the sum of the structures. The covariance that goes with it is
 * C(h) = sill - gamma(h). The nugget is part of the field; errors of measurement are given per sample instead.
 */
export interface VariogramModel {
  readonly nugget: number
  readonly structures: readonly Structure[]
}

/** Nugget plus all partial sills: the variance of the field at a point. */
export function sillOf(model: VariogramModel): number {
  return model.structures.reduce((sum, structure) => sum + structure.partialSill, model.nugget)
}

/**
 * Refuses a model that is no variogram.
 * @throws InputError on a negative or non-finite nugget or partial sill, a range that is not above zero, a ratio outside (0, 1],
 *   or a sill of zero (`allowFlat` lets that pass)
 */
export function checkModel(model: VariogramModel, allowFlat = false): void {
  if (!(model.nugget >= 0 && Number.isFinite(model.nugget))) throw new InputError('model.nugget', model.nugget, 'a number at or above zero')
  model.structures.forEach((structure, i) => {
    const at = `model.structures[${i}]`
    const { partialSill, range, ratio = 1, azimuth = 0 } = structure
    if (!(partialSill >= 0 && Number.isFinite(partialSill))) throw new InputError(`${at}.partialSill`, partialSill, 'a number at or above zero')
    if (!(range > 0 && Number.isFinite(range))) throw new InputError(`${at}.range`, range, 'a length above zero')
    if (!(ratio > 0 && ratio <= 1)) throw new InputError(`${at}.ratio`, ratio, 'minor over major range, above 0 and at most 1')
    if (!Number.isFinite(azimuth)) throw new InputError(`${at}.azimuth`, azimuth, 'degrees clockwise from +y')
  })
  if (!allowFlat && !(sillOf(model) > 0)) throw new InputError('model', sillOf(model), 'a sill (nugget plus partial sills) above zero')
}
