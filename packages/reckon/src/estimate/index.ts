// By hand
export { averageAlong } from './average-along.ts'
export type { AlongHeading, CutAt } from './average-along.ts'
export { weightedGrade } from './weighted-grade.ts'
export type { GradedWidth, WeightedGrade, WeightedGradeInput } from './weighted-grade.ts'

// A field on logs
export { fieldOutcomes } from './field-outcomes.ts'
export type { Companion, FieldBlock, FieldOutcomes } from './field-outcomes.ts'
export { logFieldPosterior } from './log-field.ts'
export type { FieldNode, FieldPosterior, FieldPrior, LogSample } from './log-field.ts'
export { changedOver } from './changed-over.ts'
export type { ChangedOver, KnownGround } from './changed-over.ts'

// Few values, no place
export { drawLognormalMeans, lognormalPosterior } from './lognormal-posterior.ts'
export type { LogMeanNode, LogValue, VariancePrior } from './lognormal-posterior.ts'
