// Asking
export { createReckoner } from './graph/reckoner.ts'
export type { Reckoner } from './graph/reckoner.ts'
export type { PartName, Reckoned } from './reckoned.ts'

// What comes back
export { isAnswer, notEnough } from './answer.ts'
export type { Answer, AnswerOr, AnswerRange, Assumed, Method, NotEnough } from './answer.ts'
export type { SecondLook } from './second-look/second-look.ts'
export type * from './shapes.ts'
export type * from './access/shapes.ts'
export type * from './finds/shapes.ts'
export type * from './bags/shapes.ts'
export type * from './sampling/shapes.ts'
export type * from './associations/shapes.ts'
export type * from './lab/shapes.ts'
export type * from './vein/shapes.ts'
export * from './today/index.ts'

export type { Openings } from './sheet/openings.ts'
export type { CrossSection } from './sheet/cross-section.ts'
export type { ReadingAt, SurveyQuality, SurveyReadings } from './survey/readings.ts'

// Drawing it elsewhere
export { developedView, planView, sectionView } from './sheet/views.ts'
export type { OnSheet, View } from './sheet/views.ts'
export { veinToGrid } from './vein/vein-to-grid.ts'
export { lostPartOn } from './vein/lost-part/on-sheet.ts'
export type { LostDrawn } from './vein/lost-part/on-sheet.ts'

// Planning a sample
export { massText, planFor, shareText, sizeText } from './sampling/plan-for.ts'

// Finding it again
export { tapeText } from './finds/place-text.ts'

// Labels and bags
export { bagKey, bagNumber, labelText } from './bags/bag-number.ts'
export { labelsOn } from './bags/rolls.ts'

// Saying it
export { entryTitle } from './entry-title.ts'
export { standing } from './assumptions.ts'
export { said, saidMoney, stepFor, toStep } from './rounding.ts'
export { azimuth, figure, grade, imperial, length, metric, money, plural, rock, volume } from './words.ts'
export { plain } from './words.ts'
export type { CrewUnits } from './words.ts'
