// Rock mass classifications
export { rockMassRating } from './rock-mass-rating.ts'
export type { RmrInput, RockMassRating } from './rock-mass-rating.ts'
export { conditionRatings, fieldStrengths, orientationRatings, pointLoadBands, ratingIn, rmrClasses, rmrSource, rqdBands, spacingBands, strengthBands, waterRatings } from './rmr-tables.ts'
export type { RmrClass } from './rmr-tables.ts'
export { alterationNumbers, qSource, ratingFromQuality, rockQuality, roughnessNumbers, setNumbers, stressNumbers, supportRatios, unsupportedSpan, waterNumbers } from './q-system.ts'
export type { QInput } from './q-system.ts'

// Blocks that joints cut loose
export { wedgeOn } from './wedge.ts'
export type { Wedge, WedgeInput, WedgeMove } from './wedge.ts'
export { jointSets } from './joint-sets.ts'
export type { JointSet } from './joint-sets.ts'
