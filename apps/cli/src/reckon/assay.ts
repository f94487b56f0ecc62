import { controlChart, duplicateMeasures, panGrade, precisionModel, sampleBelief, screenAssay } from '@lodebook/reckon/assay'
import { z } from 'zod'
import { reckoning } from './define.ts'
import type { Reckoning } from './define.ts'
import { given } from './given.ts'

const above = z.number().positive()
const some = z.number().nonnegative()
const found = z.union([z.strictObject({ grade: some }), z.strictObject({ below: some }), z.strictObject({ above: some })])

/** What a pan or a laboratory said, and whether it can be believed. */
export const assay: readonly Reckoning[] = [
  reckoning('screen-assay', 'Grade of a sample whose coarse gold was assayed apart',
    z.strictObject({ plus: z.strictObject({ mass_g: above, grade: some }), minus: z.strictObject({ mass_g: above, grades: z.array(some) }) }),
    { plus: { mass_g: 1, grade: 84.2 }, minus: { mass_g: 399, grades: [0.525] } },
    ({ plus, minus }) => ({ grade: screenAssay({ plus: { mass: plus.mass_g, grade: plus.grade }, minus: { mass: minus.mass_g, grades: minus.grades } }) })),
  reckoning('pan-grade', 'Grade from a pan: gold weighed or colours counted, with the range its few grains leave',
    z.strictObject({
      dry_mass_g: above, gold_mg: some.optional(), colours: z.array(z.strictObject({ count: z.int().min(0), mg_each: above })).optional(),
      recovery: z.strictObject({ found: z.int().min(0), seeded: z.int().min(1) }).optional(),
      grain_mg: above.optional(), scale_sd_mg: some.optional(), confidence: z.number().optional(),
    }),
    { dry_mass_g: 4000, colours: [{ count: 3, mg_each: 2.5 }, { count: 11, mg_each: 0.4 }], recovery: { found: 18, seeded: 20 } },
    (input) => {
      const { gradeGPerT, low, high, confidence, nothingSeen, assumed } = panGrade(given({
        dryMassG: input.dry_mass_g, goldMg: input.gold_mg, colours: input.colours?.map(c => ({ count: c.count, mgEach: c.mg_each })), recovery: input.recovery,
        grainMg: input.grain_mg, scaleSdMg: input.scale_sd_mg, confidence: input.confidence,
      }))
      return { grade_g_t: gradeGPerT, low, high, confidence, nothing_seen: nothingSeen, assumed }
    }),
  reckoning('sample-belief', 'What all pans and assays of one sample say together of its grade',
    z.strictObject({
      looks: z.array(z.strictObject({ mass_g: above, grain_mg: above, recovery: z.number().positive().max(1), relative_sd: some, found })),
      prior: z.strictObject({ log_mean: z.number(), log_sd: above }),
    }),
    {
      looks: [
        { mass_g: 4000, grain_mg: 0.6, recovery: 0.9, relative_sd: 0.1, found: { grade: 9.4 } },
        { mass_g: 29.2, grain_mg: 0.6, recovery: 1, relative_sd: 0.05, found: { below: 0.1 } },
      ],
      prior: { log_mean: 1, log_sd: 2 },
    },
    ({ looks, prior }) => {
      const belief = sampleBelief(
        looks.map(look => ({ mass: look.mass_g, grain: look.grain_mg, recovery: look.recovery, relativeSd: look.relative_sd, found: look.found })),
        { logMean: prior.log_mean, logSd: prior.log_sd })
      const { logMean, logSd, mean, median, low, high, evidence } = belief
      return {
        mean, median, low, high, confidence: 0.8, log_mean: logMean, log_sd: logSd,
        evidence: { log_value: evidence.logValue, variance: evidence.variance },
      }
    }),
  reckoning('duplicates', 'How well duplicates agree',
    z.strictObject({ pairs: z.array(z.tuple([some, some])) }),
    { pairs: [[8.2, 9.9], [1.4, 1.1], [33, 21], [0.6, 0.7]] },
    ({ pairs }) => {
      const { cvAveragePct, hard, withinSd, logSd } = duplicateMeasures(pairs)
      const model = precisionModel(pairs)
      return {
        cv_average_pct: cvAveragePct, hard, within_sd: withinSd, ...logSd !== undefined && { log_sd: logSd },
        ...model && { precision_model: { s0: model.s0, k: model.k, groups: model.groups } },
      }
    }),
  reckoning('control-chart', 'Standards against their certified value: which runs are more than chance',
    z.strictObject({ certified: z.number(), sd: above, values: z.array(z.number()), r4s: z.enum(['pair', 'range']).optional() }),
    { certified: 5.1, sd: 0.2, values: [5, 5.2, 5.6, 5.62, 5.1, 4.3] },
    ({ certified, sd, values, r4s }) => controlChart(certified, sd, values, r4s ?? 'pair')),
]
