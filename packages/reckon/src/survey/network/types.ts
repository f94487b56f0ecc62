import type { Degrees, Enu } from '../../core/index.ts'
import type { ErrorEllipse } from '../error-ellipse.ts'
import type { Covariance3 } from '../matrix3.ts'
import type { Precision } from '../precision.ts'
import type { ShotReadings } from '../shot.ts'

/** What can be read on a shot. `back` readings are as read at `to`, looking to `from`. */
export type ShotReading = 'distance' | 'azimuth' | 'backAzimuth' | 'inclination' | 'backInclination'
export type TieReading = 'east' | 'north' | 'up'

/** One shot of a hand survey, in the length unit of the whole network; azimuths from grid north, index corrections applied (see correctShot). */
export interface NetworkShot extends ShotReadings {
  /** What differs from the network's precision. */
  readonly precision?: Partial<Precision> | undefined
  /** Name of the set of instruments it was read with; see NetworkOptions.instruments. */
  readonly instruments?: string | undefined
  /** Readings that the crew has decided to leave out, or the whole shot. They are still compared with the result. */
  readonly leaveOut?: readonly ShotReading[] | 'shot' | undefined
}

/** A station whose place is known from outside. Without `sigma` and `covariance` it is held exactly. */
export interface Tie {
  readonly station: string
  readonly point: Enu
  /** One standard deviation of each of east, north and up; one number for all three. Infinity for a component that is not known. */
  readonly sigma?: number | Enu | undefined
  readonly covariance?: Covariance3 | undefined
  readonly leaveOut?: boolean | undefined
}

/** Errors that all shots of one set of instruments share, as one standard deviation about zero; each is then estimated with the stations. */
export interface InstrumentErrors {
  /** Of every azimuth: compass index, declination. Degrees. */
  readonly azimuth?: Degrees | undefined
  /** Clinometer index. Degrees. */
  readonly inclination?: Degrees | undefined
  /** Of every distance, length per length: a stretched tape. */
  readonly distance?: number | undefined
}

export interface NetworkOptions {
  /** What the readings are good to; the rest is `handPrecision`, which is in metres. */
  readonly precision?: Partial<Precision> | undefined
  readonly instruments?: Readonly<Record<string, InstrumentErrors>> | undefined
  /** Pairs of stations whose joint covariance is wanted. */
  readonly pairs?: readonly (readonly [string, string])[] | undefined
  /** The chance that a network without any blunder names one all the same; 0.05 unless stated. */
  readonly falseAlarm?: number | undefined
  /** The most suspects to look for; 20 unless stated. */
  readonly maxSuspects?: number | undefined
  /** Of settling on the least squares solution; 30 unless stated. */
  readonly maxIterations?: number | undefined
}

export interface NetworkInput {
  readonly shots: readonly NetworkShot[]
  readonly ties: readonly Tie[]
  readonly options?: NetworkOptions | undefined
}

export interface AdjustedStation {
  readonly point: Enu
  /** A priori covariance of the point, length unit squared: from what the readings are good to, not from how well they agree. */
  readonly covariance: Covariance3
  /** Square roots of its diagonal. */
  readonly sigma: Enu
  /** Horizontal ellipse of one standard deviation. */
  readonly ellipse: ErrorEllipse
  /** Index into `parts`. */
  readonly part: number
  /** Held exactly by a tie. */
  readonly held: boolean
}

/** Stations that shots join to each other. */
export interface NetworkPart {
  readonly stations: readonly string[]
  /** Whether a tie says where it is. */
  readonly located: boolean
  /** Of a part that is not located: the station its points are measured from. */
  readonly anchor?: string
  /** Components that no tie of the part gives; the first tied station's own value is held instead. */
  readonly assumed: readonly TieReading[]
  /** Independent checks: how many more readings there are than it takes. */
  readonly redundancy: number
  /** Sum of squared residuals, each over its variance. About equal to the redundancy when the readings are as good as stated. */
  readonly chiSquare: number
}

/** One reading against the adjusted network. */
export interface AdjustedReading {
  /** Index into the input's shots or ties. */
  readonly shot?: number
  readonly tie?: number
  readonly reading: ShotReading | TieReading
  /** What was read, degrees or length. */
  readonly observed: number
  /** Observed minus adjusted, degrees or length. On a sight steeper than 87° an azimuth's is the angle across the line of sight. */
  readonly residual: number
  /** One standard deviation of the reading. */
  readonly sigma: number
  /** 0 nothing else checks it, 1 fully checked. null when left out. */
  readonly redundancy: number | null
  /** Residual over its own standard deviation. null when nothing checks it. */
  readonly w: number | null
  /** Smallest blunder in it that would be named with 80 % chance. null when nothing checks it. */
  readonly detectable: number | null
  readonly leftOut: boolean
}

export interface Suspect {
  readonly shot?: number
  readonly tie?: number
  readonly reading: ShotReading | TieReading
  /** How far this reading is off from all the others, degrees or length: what was read minus what it should have been. */
  readonly blunder: number
  /** Standardized residual when it was named, with the earlier suspects left out. */
  readonly w: number
  /** Readings that fit the trouble about as well. Empty when this one stands out with 95 % confidence. */
  readonly alternatives: readonly { readonly shot?: number, readonly tie?: number, readonly reading: ShotReading | TieReading, readonly w: number }[]
  /** In words: 'foresight and backsight azimuth of A7-A8 disagree by 9.8°; most likely the backsight, 9.7° off'. */
  readonly says: string
}

export interface GlobalTest {
  readonly chiSquare: number
  /** Degrees of freedom. */
  readonly redundancy: number
  /** chiSquare over redundancy: 1 when readings are as good as stated, 4 when twice as bad. null without redundancy. */
  readonly varianceFactor: number | null
  /** Chance of a sum at least this large when readings are as good as stated and free of blunders. null without redundancy. */
  readonly p: number | null
}

export interface AdjustedShot {
  readonly shot: number
  /** From adjusted points. null where an end has no place or the ends coincide. */
  readonly distance: number | null
  readonly azimuth: Degrees | null
  readonly inclination: Degrees | null
  /** Foresight minus reversed backsight, (-180, 180], degrees; null without both. */
  readonly azimuthDifference: Degrees | null
  /** Foresight plus backsight. */
  readonly inclinationDifference: Degrees | null
}

/** How far two stations' errors go together. */
export interface StationPair {
  readonly a: string
  readonly b: string
  /** Cov(a, b), rows for a. */
  readonly covariance: Covariance3
  /** Covariance of b minus a: how well one is known from the other. */
  readonly relative: Covariance3
}

export interface NetworkResult {
  /** Located stations by name. */
  readonly stations: ReadonlyMap<string, AdjustedStation>
  /** Stations of parts that no tie locates, measured from their part's anchor at [0, 0, 0]. */
  readonly floating: ReadonlyMap<string, AdjustedStation>
  /** Stations that are joined but that the readings in use do not place, such as behind a shot whose only azimuth is left out. */
  readonly undetermined: readonly string[]
  readonly parts: readonly NetworkPart[]
  readonly shots: readonly AdjustedShot[]
  readonly readings: readonly AdjustedReading[]
  /** Worst first. Reported only: nothing is taken out. */
  readonly suspects: readonly Suspect[]
  readonly test: GlobalTest
  /** Estimated errors of each set of instruments with their standard deviations: degrees, degrees, length per length. */
  readonly instruments: ReadonlyMap<string, { readonly errors: Enu, readonly sigma: Enu }>
  /** The pairs asked for, in their order; null for a pair without places in one frame. */
  readonly pairs: readonly (StationPair | null)[]
  /** false when readings are so far off that points are one linear step about those that agree; a caution says so. */
  readonly converged: boolean
  readonly iterations: number
  readonly cautions: readonly string[]
}
