import { InputError, positive } from '../core/index.ts'

/**
 * Gy's mineral factor m = ((1 - a)/a) ((1 - a) r + a t), g/cm³: how badly a share `a` of mineral is spread among the pieces.
 * @param share   of mineral by mass: assay over the assay of the pure mineral, in (0, 1)
 * @param mineral,gangue  densities, g/cm³
 */
export function mineralFactor(share: number, mineral: number, gangue: number): number {
  if (!(share > 0 && share < 1)) throw new InputError('share', share, 'between 0 and 1')
  return (1 - share) / share * ((1 - share) * positive(mineral, 'mineral') + share * positive(gangue, 'gangue'))
}

/** Gy's older liberation factor, sqrt(L/d), 1 for pieces no larger than L. */
export const rootLiberation = (sizeCm: number, liberationSizeCm: number): number =>
  positive(sizeCm, 'size_cm') <= positive(liberationSizeCm, 'liberation_size_cm') ? 1 : Math.sqrt(liberationSizeCm / sizeCm)

export interface GyStage {
  readonly sizeCm: number
  readonly liberationSizeCm: number
  readonly mineralFactor: number
  /** One relative standard deviation that is allowed. */
  readonly relativeSd: number
  readonly shape: number
  readonly granulometric: number
}

/** Least mass of a sample, grams, by Gy's formula M = f g l m d³/s². Practice doubles it for safety; this does not. */
export function gyMass(stage: GyStage): number {
  const { sizeCm, shape, granulometric } = stage
  return positive(shape, 'shape') * positive(granulometric, 'granulometric') * rootLiberation(sizeCm, stage.liberationSizeCm) *
    positive(stage.mineralFactor, 'mineral_factor') * sizeCm ** 3 / positive(stage.relativeSd, 'relative_sd') ** 2
}
