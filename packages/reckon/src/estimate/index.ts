export { fieldOutcomes } from './field-outcomes.ts'
export type { Companion, FieldBlock, FieldOutcomes } from './field-outcomes.ts'
export { logFieldPosterior } from './log-field.ts'
export type { FieldNode, FieldPosterior, FieldPrior, LogSample } from './log-field.ts'
