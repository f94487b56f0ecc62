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

// What a day pays
export { breakEvenOunces, personDay, personDaysPerTonne } from './person-day.ts'
export type { Costs, PersonDay, PersonDayInput } from './person-day.ts'
