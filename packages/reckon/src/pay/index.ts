// Money over time
export { netPresentValue } from './net-present-value.ts'
export { rateOfReturn } from './rate-of-return.ts'
export type { RateOfReturn } from './rate-of-return.ts'
export { hoskoldPresentValue, hoskoldYears } from './hoskold.ts'

// What a tonne must carry
export { breakEvenGrade } from './break-even-grade.ts'
export type { BreakEven } from './break-even-grade.ts'

// What it is worth to know more
export { informationWorth } from './information-worth.ts'
export type { Decision, InformationWorth } from './information-worth.ts'

// What a piece of work takes and brings
export { checkPlan, ouncesToEarn, workDays, workOutcome, workSteps } from './options/work-outcome.ts'
export type { Rock, SaleTerms, WorkCosts, WorkInputs, WorkOutcome, WorkPlan, WorkStep } from './options/work-outcome.ts'
export { decile, positiveAt, shareAt } from './options/spread.ts'
export type { Spread } from './options/spread.ts'
export { changingConditions, updatedRate } from './options/rate-update.ts'
export type { LoggedShift, RateUpdate } from './options/rate-update.ts'

// Options beside each other
export { allOptionOutcomes, beatOdds, optionOutcomes, surplusOf } from './options/option-outcomes.ts'
export type { JudgedOption, OptionOutcomes, OptionsInput } from './options/option-outcomes.ts'
export { correlatedNormals } from './options/correlated-normals.ts'
export { levelReached } from './options/crossing.ts'

// Money over the weeks
export { cashLine, cashWeeks, deepestHole, weeklyFlows } from './options/cash-line.ts'
export type { CashCase } from './options/cash-line.ts'

// Where the next look does most good
export { certaintyWorth, lookWorth, worthNow } from './next/look-worth.ts'
export type { GroundChoice, Look } from './next/look-worth.ts'
export { lookBatch, normalBelow } from './next/look-batch.ts'
export type { BatchStep, CandidateLook } from './next/look-batch.ts'
