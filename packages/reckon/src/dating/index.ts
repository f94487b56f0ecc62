export { dateSpans } from './date-spans.ts'
export type { DatedSpans, DateSpan, YearBins } from './date-spans.ts'
export { fewestVisits } from './fewest-visits.ts'
export type { Visit } from './fewest-visits.ts'
