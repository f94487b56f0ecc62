import { averageAlong, weightedGrade } from '@lodebook/reckon/estimate'
import { z } from 'zod'
import { reckoning } from './define.ts'
import type { Reckoning } from './define.ts'
import { given } from './given.ts'

const above = z.number().positive()
const some = z.number().nonnegative()

/** Averages a crew could do by hand. */
export const estimate: readonly Reckoning[] = [
  reckoning('weighted-grade', 'Grade weighted by width, and diluted to the least width that can be broken',
    z.strictObject({
      intervals: z.array(z.strictObject({ width: above, grade: some, density: above.optional() })),
      minimum_width: some.optional(), wall_grade: some.optional(), wall_density: above.optional(),
    }),
    { intervals: [{ width: 0.12, grade: 3 }, { width: 0.18, grade: 62 }], minimum_width: 0.9, wall_grade: 0.2 },
    (input) => {
      const { width, grade, dilutedWidth, dilutedGrade } = weightedGrade(given({
        intervals: input.intervals.map(given), minimumWidth: input.minimum_width, wallGrade: input.wall_grade, wallDensity: input.wall_density }))
      return { width, grade, diluted_width: dilutedWidth, diluted_grade: dilutedGrade }
    }),
  reckoning('average-along', 'Average width and grade along a heading with unevenly spaced cuts',
    z.strictObject({ cuts: z.array(z.strictObject({ at: z.number(), width: above, grade: some.optional() })) }),
    { cuts: [{ at: 0, width: 2, grade: 10 }, { at: 10, width: 4, grade: 5 }, { at: 30, width: 6, grade: 1 }] },
    ({ cuts }) => {
      const { length, meanWidth, meanGrade } = averageAlong(cuts.map(given))
      return { length, mean_width: meanWidth, ...meanGrade !== undefined && { mean_grade: meanGrade } }
    }),
]
