import { nuggetCount, samplePlan, samplingError } from '@lodebook/reckon/sampling'
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
  reckoning('sample-plan', 'How large a bag, and how to crush and halve it by hand, for a wanted precision',
    z.strictObject({
      grade_g_t: above, liberation_size_cm: above, fragment_size_cm: above, relative_sd: above, final_mass_g: above, final_size_cm: above,
      crush_sizes_cm: z.array(above).min(1), cut: z.boolean().default(false), most_kg: above.default(100),
      shape: above.optional(), granulometric: above.optional(), gold_density: above.optional(), exponent: z.number().min(0).max(3).optional(),
      minutes: z.strictObject({ take_kg: z.number().min(0), crush_kg: z.number().min(0), split: z.number().min(0) })
        .default({ take_kg: 3, crush_kg: 10, split: 5 }),
    }),
    {
      grade_g_t: 12, liberation_size_cm: 0.08, fragment_size_cm: 5, relative_sd: 0.3, final_mass_g: 2000, final_size_cm: 0.1,
      crush_sizes_cm: [2, 1, 0.5, 0.2, 0.1], cut: true,
    },
    (input) => {
      const plan = samplePlan(given({
        gradeGPerT: input.grade_g_t, liberationSizeCm: input.liberation_size_cm, fragmentCm: input.fragment_size_cm, relativeSd: input.relative_sd,
        finalMassG: input.final_mass_g, finalSizeCm: input.final_size_cm, crushSizesCm: input.crush_sizes_cm, cut: input.cut, mostG: input.most_kg * 1000,
        shape: input.shape, granulometric: input.granulometric, goldDensity: input.gold_density, exponent: input.exponent,
        work: { takeKg: input.minutes.take_kg, crushKg: input.minutes.crush_kg, crushFromCm: 5, crushToCm: 0.1, split: input.minutes.split },
      }))
      return {
        reached: plan.reached, bag_g: plan.bagG, relative_sd: plan.relativeSd, bag_relative_sd: plan.bagSd, minutes: plan.minutes,
        stages: plan.stages.map(s => ({ crush_to_cm: s.sizeCm, from_g: s.fromG, halvings: s.halvings, to_g: s.toG, relative_sd: s.relativeSd })),
        bag_at_best: plan.bag.atBest, bag_as_broken: plan.bag.asBroken, grains: plan.bag.grains, chance_of_none: plan.bag.chanceOfNone,
      }
    }),
]
