// angles and errors
export { azimuthOf, signedAngle } from './angles.ts'
export { errorEllipse } from './error-ellipse.ts'
export type { ErrorEllipse } from './error-ellipse.ts'
export type { Covariance3 } from './matrix3.ts'
export { handPrecision } from './precision.ts'
export type { Precision } from './precision.ts'

// the whole network
export { adjustNetwork } from './network/adjust-network.ts'
export type {
  AdjustedReading, AdjustedShot, AdjustedStation, GlobalTest, InstrumentErrors, NetworkInput, NetworkOptions, NetworkPart, NetworkResult,
  NetworkShot, ShotReading, StationPair, Suspect, Tie, TieReading,
} from './network/types.ts'
