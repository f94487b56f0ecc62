// By hand
export { averageAlong } from './average-along.ts'
export type { AlongHeading, CutAt } from './average-along.ts'
export { weightedGrade } from './weighted-grade.ts'
export type { GradedWidth, WeightedGrade, WeightedGradeInput } from './weighted-grade.ts'

// Bunched samples and high values
export { cellWeights, polygonWeights } from './decluster.ts'
export { topCutStudy } from './top-cut.ts'
export type { MetalShare, TopCutStudy } from './top-cut.ts'

// A field on logs
export { FieldGround } from './field/field-ground.ts'
export type { FieldSite } from './field/field-ground.ts'
export { fieldOutcomes } from './field-outcomes.ts'
export type { FieldOutcomes, OutcomeOptions } from './field-outcomes.ts'
export { fieldOutcomesPlain } from './field-outcomes-plain.ts'
export type { Companion, FieldBlock, PlainOutcomes } from './field-outcomes-plain.ts'
export { logFieldPosterior } from './log-field.ts'
export type { FieldNode, FieldPosterior, FieldPrior, LogSample } from './log-field.ts'
export { changedOver, changedOverLimit } from './changed-over.ts'
export type { ChangedOver, KnownGround } from './changed-over.ts'

// Few values, no place
export { drawLognormalMeans, lognormalPosterior } from './lognormal-posterior.ts'
export type { LogMeanNode, LogValue, VariancePrior } from './lognormal-posterior.ts'
