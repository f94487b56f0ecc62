import { finite, InputError } from '../core/index.ts'
import { conditionRatings, orientationRatings, ratingIn, rmrClasses, rqdBands, spacingBands, strengthBands, waterRatings } from './rmr-tables.ts'
import type { RmrClass } from './rmr-tables.ts'

export interface RmrInput {
  /** Unconfined strength, MPa, or the rating itself where a point load gave it. */
  readonly strengthMPa?: number
  readonly strengthRating?: number
  readonly rqd: number
  readonly spacingM: number
  readonly condition: keyof typeof conditionRatings | number
  readonly water: keyof typeof waterRatings
  readonly orientation: keyof typeof orientationRatings
}

export interface RockMassRating {
  readonly total: number
  readonly parts: Readonly<Record<'strength' | 'rqd' | 'spacing' | 'condition' | 'water' | 'orientation', number>>
  readonly class: RmrClass
}

/**
 * Rock mass rating of 1989: the sum of six ratings, 0 to 100, and its class.
 * @param input  condition as one of the five descriptions, or the sum of the detailed ratings (0 to 30)
 * @throws InputError for values outside their range
 * Source: Bieniawski 1989, tables from memory (rmr-tables.ts).
 */
export function rockMassRating(input: RmrInput): RockMassRating {
  const { strengthMPa, strengthRating, rqd, spacingM, condition, water, orientation } = input
  if (!(finite(rqd, 'rqd') >= 0 && rqd <= 100)) throw new InputError('rqd', rqd, '0 to 100 per cent')
  if (!(finite(spacingM, 'spacing_m') >= 0)) throw new InputError('spacing_m', spacingM, 'metres, zero or more')
  if (typeof condition === 'number' && !(condition >= 0 && condition <= 30)) throw new InputError('condition', condition, '0 to 30')
  const strength = strengthRating ?? ratingIn(strengthBands, finite(strengthMPa ?? NaN, 'strength_MPa', 'a strength in MPa, or its rating'))
  if (strength === undefined || !(strength >= 0 && strength <= 15)) throw new InputError('strength_MPa', strengthMPa ?? strengthRating, 'zero or more')
  const parts = {
    strength, rqd: ratingIn(rqdBands, rqd)!, spacing: ratingIn(spacingBands, spacingM)!, condition: typeof condition === 'number' ? condition : conditionRatings[condition],
    water: waterRatings[water], orientation: orientationRatings[orientation],
  }
  const total = Math.max(0, Object.values(parts).reduce((sum, v) => sum + v, 0))
  return { total, parts, class: rmrClasses.find(c => total >= c.least)! }
}
