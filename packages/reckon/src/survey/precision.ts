import type { Degrees } from '../core/index.ts'

/** What one reading is good to: one standard deviation each. Lengths in the unit of the shots. */
export interface Precision {
  /** Of a distance, whatever its length. */
  readonly distance: number
  /** Of a distance, growing with it: length per length. */
  readonly distancePerLength: number
  readonly azimuth: Degrees
  readonly inclination: Degrees
  /** How far off level the compass is held: on a steep sight this turns the azimuth by its tangent. */
  readonly levelling: Degrees
  /** How far from the station's mark the instrument or the target stands. */
  readonly centring: number
  /** Of the inclination of a shot that was written down without one and is taken as level. */
  readonly assumedLevel: Degrees
}

/**
 * Hand compass, clinometer and tape, metres: common practice, no source. State what your own instruments do instead
 * wherever a crew knows it, from repeated readings on one line.
 */
export const handPrecision: Precision = {
  distance: 0.02, distancePerLength: 0.001, azimuth: 0.7, inclination: 0.7, levelling: 0.7, centring: 0.01, assumedLevel: 3,
}
