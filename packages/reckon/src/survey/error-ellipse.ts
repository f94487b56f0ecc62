import type { Degrees } from '../core/index.ts'
import type { Covariance3 } from './matrix3.ts'
import { azimuthOf } from './angles.ts'
import { degrees, InputError } from '../core/index.ts'

/** A horizontal error ellipse: semi-axes in the length unit, azimuth of the longer one in [0, 180). */
export interface ErrorEllipse {
  readonly major: number
  readonly minor: number
  readonly azimuth: Degrees
}

/**
 * The horizontal error ellipse of a point.
 * @param covariance  over [east, north, up]; only the horizontal part is used
 * @param confidence  chance that the ellipse holds the true point, in (0, 1); left out, the semi-axes are one standard deviation, which holds
 *                    it 39 % of the time
 * @throws InputError when confidence is outside (0, 1)
 * Source: chi-square with two degrees of freedom in closed form, k² = -2 ln(1 - confidence); Ghilani, Adjustment Computations, ch. 19 (M).
 */
export function errorEllipse(covariance: Covariance3, confidence?: number): ErrorEllipse {
  if (confidence !== undefined && !(confidence > 0 && confidence < 1)) throw new InputError('confidence', confidence, 'a number between 0 and 1')
  const [[ee, en], [, nn]] = covariance
  const scale = confidence === undefined ? 1 : Math.sqrt(-2 * Math.log1p(-confidence))
  const middle = (ee + nn) / 2
  const spread = Math.hypot((nn - ee) / 2, en)
  const azimuth = spread === 0 ? 0 : azimuthOf(degrees(Math.atan2(2 * en, nn - ee) / 2)) % 180
  const minorSquared = Math.max(0, middle - spread)
  return { major: scale * Math.sqrt(Math.max(0, middle + spread)), minor: scale * Math.sqrt(minorSquared), azimuth }
}
