import { kruskalWallis, lognormalMean, mannWhitney, shapiroWilk } from '@lodebook/reckon/statistics'
import { z } from 'zod'
import { reckoning } from './define.ts'
import type { Reckoning } from './define.ts'

/** JSON has no infinity: null says that the limit lies beyond the numbers. */
const bounded = (value: number): number | null => Number.isFinite(value) ? value : null

/** What few values say. */
export const statistics: readonly Reckoning[] = [
  reckoning('lognormal-mean', 'Mean of a few lognormal values with exact limits',
    z.strictObject({ values: z.array(z.number()), confidence: z.number() }),
    { values: [10, 13, 20, 36, 41, 59, 67, 110, 110, 136, 140, 160, 200, 230, 1300], confidence: 0.95 },
    ({ values, confidence }) => {
      const r = lognormalMean(values, confidence)
      return {
        arithmetic_mean: r.mean, sd: r.sd, sichel_t: r.sichelT, sichel_error: r.sichelError, log_mean: r.logMean, log_sd: r.logSd,
        land: { low: r.land.low, high: bounded(r.land.high), low_one_sided: r.land.lowOneSided, high_one_sided: bounded(r.land.highOneSided) },
        cox: { low: r.cox.low, high: bounded(r.cox.high), low_one_sided: r.cox.lowOneSided, high_one_sided: bounded(r.cox.highOneSided) },
        student_upper: r.studentUpper, chebyshev_upper: bounded(r.chebyshevUpper), confidence,
        ...values.length >= 3 && r.logSd > 0 && { shapiro_wilk_of_logs: shapiroWilk(values.map(Math.log)) },
      }
    }),
  reckoning('compare-groups', 'Do groups of values come from one population, by ranks',
    z.strictObject({ groups: z.array(z.array(z.number())) }),
    { groups: [[2.9, 3, 2.5, 2.6, 3.2], [3.8, 2.7, 4, 2.4], [2.8, 3.4, 3.7, 2.2, 2]] },
    ({ groups }) => {
      const kruskal = kruskalWallis(groups)
      const [x, y] = groups
      if (groups.length !== 2 || x === undefined || y === undefined) return { kruskal_wallis: kruskal }
      const { W, p, pGreater, pLess, exact } = mannWhitney(x, y)
      // p is two-sided; the one-sided chances stand beside it
      return { kruskal_wallis: kruskal, mann_whitney: { W, p, p_greater: pGreater, p_less: pLess, exact } }
    }),
]
