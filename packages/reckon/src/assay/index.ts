// One sample, all looks together
export { sampleBelief } from './sample-belief.ts'
export type { GradePrior, SampleBelief } from './sample-belief.ts'
export type { GoldLook } from './gold-look.ts'

// One determination
export { screenAssay } from './screen-assay.ts'
export type { ScreenAssay } from './screen-assay.ts'
export { panGrade, usualPan } from './pan-grade.ts'
export type { PanGrade, PanResult } from './pan-grade.ts'
export { weightedCountRange } from './weighted-count-range.ts'
export type { CountedGrains } from './weighted-count-range.ts'

// Can it be believed
export { duplicateMeasures } from './duplicates.ts'
export type { DuplicateMeasures, Pair } from './duplicates.ts'
export { precisionModel, robustFactors } from './precision-model.ts'
export type { PrecisionModel } from './precision-model.ts'
export { carriedBlanks, controlChart } from './control-chart.ts'
export type { Breach, ControlRule, RangeWording } from './control-chart.ts'
export { horwitzPct } from './horwitz.ts'
export { expectedSpread } from './look-spread.ts'
export type { Determination } from './look-spread.ts'
export { insertionPlan } from './insertion-plan.ts'
export type { BagToSend, InsertedPlace, InsertionPlan } from './insertion-plan.ts'
export { touchedBy } from './touched-by.ts'
export type { RunPlace } from './touched-by.ts'

// Pans against assays
export { pairsFor, panCalibration } from './pan-calibration.ts'
export type { PanAndAssay, PanCalibration } from './pan-calibration.ts'

// Density
export { immersionDensity, mixtureDensity, voidsOf, waterDensity } from './rock-density.ts'
export type { Immersion, Part } from './rock-density.ts'
