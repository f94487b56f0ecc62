import { nuggetCount, samplingError } from '@lodebook/reckon/sampling'
import { z } from 'zod'
import { reckoning } from './define.ts'
import type { Reckoning } from './define.ts'
import { given } from './given.ts'

const above = z.number().positive()

/** What taking a sample costs in certainty. */
export const sampling: readonly Reckoning[] = [
  reckoning('sampling-error', 'Least error of a sample of broken gold ore (Gy)',
    z.strictObject({
      nominal_size_cm: above, mass_g: above, lot_mass_g: above.optional(), grade_g_t: above, liberation_size_cm: above,
      shape: above.optional(), granulometric: above.optional(), gold_density: above.optional(), exponent: z.number().min(0).max(3).optional(),
    }),
    { nominal_size_cm: 1, mass_g: 5000, grade_g_t: 10, liberation_size_cm: 0.05 },
    (input) => {
      const { relativeSd, samplingConstant, liberationFactor } = samplingError(given({
        nominalSizeCm: input.nominal_size_cm, massG: input.mass_g, lotMassG: input.lot_mass_g, gradeGPerT: input.grade_g_t,
        liberationSizeCm: input.liberation_size_cm, shape: input.shape,
        granulometric: input.granulometric, goldDensity: input.gold_density, exponent: input.exponent,
      }))
      return { relative_sd: relativeSd, sampling_constant: samplingConstant, liberation_factor: liberationFactor }
    }),
  reckoning('nugget-count', 'Gold grains to expect in a sample, and the chance of none',
    z.strictObject({ mass_g: above, grade_g_t: above, grain_mg: above, free_share: z.number().positive().max(1).optional() }),
    { mass_g: 30, grade_g_t: 5, grain_mg: 0.1579 },
    (input) => {
      const { expected, chanceOfNone, relativeSd } = nuggetCount({
        massG: input.mass_g, gradeGPerT: input.grade_g_t, grainMg: input.grain_mg, freeShare: input.free_share ?? 1 })
      return { expected, chance_of_none: chanceOfNone, relative_sd: relativeSd }
    }),
]
