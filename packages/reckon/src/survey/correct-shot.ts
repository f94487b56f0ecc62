import type { Corrections, ShotReadings } from './shot.ts'
import type { Degrees } from '../core/index.ts'
import { finite, InputError, positive } from '../core/index.ts'
import { azimuthOf } from './angles.ts'

/**
 * Readings from grid north with index corrections applied, as adjustNetwork takes them.
 * @param shot  as written: distance, and azimuths from the north that `corrections.declination` and `convergence` lead from
 * @returns a new shot with whatever else the given one carries
 * @throws InputError when a correction is not a number, or leaves no distance, or a reading is out of range
 */
export function correctShot<T extends ShotReadings>(shot: T, corrections: Corrections): T {
  for (const [name, value] of Object.entries(corrections)) if (value !== undefined) finite(value as number, `corrections.${name}`)
  const { compass = 0, clinometer = 0, tape = 0, tapeFactor = 1, declination = 0, convergence = 0 } = corrections
  const turned = (azimuth: Degrees, field: string): Degrees => {
    if (!(azimuth >= 0 && azimuth <= 360)) throw new InputError(field, azimuth, 'degrees from 0 to 360')
    return azimuthOf(azimuth + compass + declination - convergence)
  }
  const tilted = (inclination: Degrees, field: string): Degrees => {
    if (!(Math.abs(inclination) <= 90)) throw new InputError(field, inclination, 'degrees from -90 to 90')
    return Math.min(90, Math.max(-90, inclination + clinometer)) // a correction does not carry a sight over the vertical
  }
  const { azimuth, backAzimuth, inclination, backInclination } = shot
  return {
    ...shot,
    distance: positive(shot.distance * tapeFactor + tape, 'distance', 'a distance above zero once corrected'),
    ...azimuth === undefined ? {} : { azimuth: turned(azimuth, 'azimuth') },
    ...backAzimuth === undefined ? {} : { backAzimuth: turned(backAzimuth, 'backAzimuth') },
    ...inclination === undefined ? {} : { inclination: tilted(inclination, 'inclination') },
    ...backInclination === undefined ? {} : { backInclination: tilted(backInclination, 'backInclination') },
  }
}
