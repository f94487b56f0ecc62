import type { Degrees } from '../core/index.ts'

/** The readings of one shot. Which north azimuths are from, and whether index corrections are applied, is for the function that takes them to say. */
export interface ShotReadings {
  readonly from: string
  readonly to: string
  /** Slope distance. */
  readonly distance: number
  /** [0, 360]; a plumbed shot may go without. */
  readonly azimuth?: Degrees | undefined
  /** As read at `to`, looking to `from`. */
  readonly backAzimuth?: Degrees | undefined
  /** [-90, 90], up positive. Without either inclination a shot is taken as level, with the precision `assumedLevel`. */
  readonly inclination?: Degrees | undefined
  readonly backInclination?: Degrees | undefined
}

/** What turns readings as written into readings from grid north. All are added to what was read, but for `convergence`. */
export interface Corrections {
  /** Index correction of the compass. */
  readonly compass?: Degrees | undefined
  /** Index correction of the clinometer; it enters foresight and backsight alike, and so drops out of their mean. */
  readonly clinometer?: Degrees | undefined
  /** Added to every distance, such as a missing tape end; length. */
  readonly tape?: number | undefined
  /** Every distance is multiplied by this, before `tape` is added: 1.002 for a tape that reads 0.2 % short. */
  readonly tapeFactor?: number | undefined
  /** Magnetic north from true north, east positive; 0 when azimuths are from true or grid north. */
  readonly declination?: Degrees | undefined
  /** Grid north from true north, clockwise positive: convergence of the projection, or rotation of a local grid. Taken off. */
  readonly convergence?: Degrees | undefined
}
