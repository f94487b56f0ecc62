// angles and errors
export { azimuthOf, signedAngle } from './angles.ts'
export { errorEllipse } from './error-ellipse.ts'
export type { ErrorEllipse } from './error-ellipse.ts'
export type { Covariance3 } from './matrix3.ts'
export { handPrecision } from './precision.ts'
export type { Precision } from './precision.ts'

// shots and traverses
export { correctShot } from './correct-shot.ts'
export { reduceShot } from './reduce-shot.ts'
export type { ReducedShot } from './reduce-shot.ts'
export type { Corrections, ShotReadings } from './shot.ts'
export { twoTapes } from './two-tapes.ts'
export type { TapedPoint, TwoTapes } from './two-tapes.ts'
export { traverse } from './traverse.ts'
export type { AdjustedTraverse, KnownStation, TraverseInput, TraverseLeg } from './traverse.ts'

// the shape of openings
export { passageSection, passageVolume, shoelace } from './passage-section.ts'
export type { PassageSection, PassageVolume, SectionAlong, SectionPoint } from './passage-section.ts'

// the whole network
export { adjustNetwork } from './network/adjust-network.ts'
export type {
  AdjustedReading, AdjustedShot, AdjustedStation, GlobalTest, InstrumentErrors, NetworkInput, NetworkOptions, NetworkPart, NetworkResult,
  NetworkShot, ShotReading, StationPair, Suspect, Tie, TieReading,
} from './network/types.ts'

// norths and grids
export { declination } from './declination.ts'
export type { Declination } from './declination.ts'
export { ellipsoidOf, ellipsoids } from './ellipsoids.ts'
export type { Ellipsoid, EllipsoidName } from './ellipsoids.ts'
export { project, unproject } from './transverse-mercator.ts'
export type { MercatorFrame, Projected } from './transverse-mercator.ts'
export { utm, utmFrame, utmInverse, utmZone } from './utm.ts'
export type { Hemisphere, UtmPoint } from './utm.ts'
