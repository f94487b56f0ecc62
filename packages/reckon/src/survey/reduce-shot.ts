import type { Covariance3 } from './matrix3.ts'
import type { Precision } from './precision.ts'
import type { ShotReadings } from './shot.ts'
import type { Degrees, Enu } from '../core/index.ts'
import { degrees, InputError } from '../core/index.ts'
import { azimuthOf, signedAngle } from './angles.ts'
import { map3 } from './matrix3.ts'
import { checkShot } from './network/check-input.ts'
import { sightOf, vectorErrors } from './network/sight.ts'
import { handPrecision } from './precision.ts'

export interface ReducedShot {
  /** From `from` to `to`: east, north, up. */
  readonly vector: Enu
  /** Of the vector, from what the readings are good to. */
  readonly covariance: Covariance3
  readonly distance: number
  /** Mean of foresight and reversed backsight. */
  readonly azimuth: Degrees
  readonly inclination: Degrees
  /** Foresight minus reversed backsight, (-180, 180]; null without both. */
  readonly azimuthDifference: Degrees | null
  /** Foresight plus backsight. */
  readonly inclinationDifference: Degrees | null
}

/**
 * One shot as a vector with its covariance.
 * @param shot  slope distance, grid azimuths, inclinations; correctShot applies declination, convergence and index corrections first
 * @param precision  what differs from handPrecision (metres, degrees)
 * @returns means of foresight and backsight. Where the two azimuths are more than a right angle apart there is no mean: the foresight stands,
 *          and the difference says so. A plumbed shot without an azimuth has azimuth 0
 * @throws InputError for a reading out of range, or without any azimuth on a sight less steep than 87.1°
 * Formula: level distance S cos v, rise S sin v, east and north by sine and cosine of the azimuth. Errors are square to each other along the
 * sight, level across it and in its own vertical plane: S's sigma; S times that of the azimuth times cos v, with the levelling error times
 * sin v; S times that of the inclination; centring at both ends in all three. See docs/methods/survey.md.
 */
export function reduceShot(shot: ShotReadings, precision: Partial<Precision> = {}): ReducedShot {
  checkShot(shot, '')
  const sight = sightOf(shot, { ...handPrecision, ...precision })
  const [along, across, rise] = vectorErrors(sight)
  if (across === undefined) throw new InputError('azimuth', shot.azimuth, 'an azimuth, for a shot that is not plumb')
  const { distance } = sight
  const axes = [[along!, sight.along], [across, sight.across], [rise!, sight.rise]] as const
  const { azimuth, backAzimuth, inclination, backInclination } = shot
  return {
    vector: [distance * sight.along[0], distance * sight.along[1], distance * sight.along[2]],
    covariance: map3((i, j) => axes.reduce((sum, [sigma, axis]) => sum + sigma ** 2 * axis[i] * axis[j], 0)),
    distance, azimuth: azimuthOf(degrees(sight.azimuth)), inclination: degrees(sight.inclination),
    azimuthDifference: azimuth === undefined || backAzimuth === undefined ? null : signedAngle(azimuth - backAzimuth + 180),
    inclinationDifference: inclination === undefined || backInclination === undefined ? null : inclination + backInclination,
  }
}
