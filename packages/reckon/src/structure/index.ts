// Planes and lines in their own terms
export { angleBetween, attitudeOf, axesOf, checkedAttitude, dipDirectionOf, normalOf, strikeFrom, wrapped } from './attitude.ts'
export type { Attitude, PlaneAxes } from './attitude.ts'
export { checkedLine, directionOf, lineOf, vectorOf } from './line.ts'
export type { Line } from './line.ts'
export { veinFrame } from './vein-frame.ts'
export type { OffVein, VeinFrame } from './vein-frame.ts'
export { symmetricEigen } from './symmetric-eigen.ts'
export type { Eigen3 } from './symmetric-eigen.ts'

// Fitting
export { fitPlane, planeThrough } from './fit-plane.ts'
export { fitVeinPlane, usualPointSigma, usualReadingSigma } from './fit-vein-plane.ts'
export type { AttitudeReading, ContactPoint, FittedVein, VeinObservations } from './fit-vein-plane.ts'
export { planeSigmaAt } from './fitted-plane.ts'
export type { FittedPlane } from './fitted-plane.ts'
export { normalCovariance } from './orientation-doubt.ts'
export type { OrientationDoubt } from './orientation-doubt.ts'
export type { CovarianceRows } from './covariance.ts'

// Thickness and dip
export { trueThickness } from './true-thickness.ts'
export { trueWidth } from './true-width.ts'
export type { TapedWidth, TrueWidth } from './true-width.ts'
export { trueDip } from './true-dip.ts'

// Lines, sets and faults
export { planeIntersection, rakeOf } from './plane-intersection.ts'
export type { PlaneIntersection } from './plane-intersection.ts'
export { directionMean } from './direction-mean.ts'
export type { DirectionMean } from './direction-mean.ts'
export { meanPlane, orientationTensor } from './orientation-tensor.ts'
export type { OrientationTensor } from './orientation-tensor.ts'
export { faultOffset } from './fault-offset.ts'
export type { FaultOffset, PlacedPlane } from './fault-offset.ts'
export { slipMeasures, slipVector } from './fault-slip.ts'
export type { SlipMeasures, SlipParts } from './fault-slip.ts'

// The lost part of a vein past a fault
export * from './lost-part/index.ts'

// The net: lower hemisphere, equal area
export * from './net/index.ts'

// One plane, two, or a curve; where it swells
export * from './surface/index.ts'
