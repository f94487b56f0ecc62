// Values
export { checkedValues, mean, skewness, standardDeviation, variance, weightedMean, weightedVariance } from './moments.ts'
export { quantile, quantiles } from './quantile.ts'

// The mean of few lognormal values
export { lognormalMean, sichelEstimate } from './lognormal-mean.ts'
export type { Limits, LognormalMean } from './lognormal-mean.ts'
export { landH, landLimit } from './land-limit.ts'
export type { LogSummary } from './land-limit.ts'
export { chebyshevUpper, checkedConfidence, coxLimit, skewedUpper, studentUpper } from './mean-limits.ts'
export type { CoxForm, Summary } from './mean-limits.ts'
export { finneyFactor, sichelFactor } from './sichel-factor.ts'
export { shapiroWilk } from './shapiro-wilk.ts'

// Lines and plots
export { lineSd, yorkLine } from './york-line.ts'
export type { DoubtfulPoint, YorkLine } from './york-line.ts'
export { plottingPositions } from './plotting-positions.ts'
export type { LimitedValue, PlottedValue } from './plotting-positions.ts'

// Groups
export { kruskalWallis } from './kruskal-wallis.ts'
export type { KruskalWallis } from './kruskal-wallis.ts'
export { mannWhitney } from './mann-whitney.ts'
export type { MannWhitney } from './mann-whitney.ts'
export { groupShift } from './group-shift.ts'
export type { GroupShift } from './group-shift.ts'
export { rankCorrelation } from './rank-correlation.ts'
export type { RankCorrelation } from './rank-correlation.ts'
export type { WithinLimits } from './within-limits.ts'
export { holm } from './holm.ts'

// Counts
export { jeffreysRange, poissonRange, poissonUpper, wilsonRange } from './count-intervals.ts'

// Numerical helpers
export { fallingThrough } from './find-crossing.ts'
export { integral } from './gauss-legendre.ts'
