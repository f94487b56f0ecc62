import { InputError } from '../../core/index.ts'
import { checkedLine, directionOf } from '../line.ts'
import type { Line } from '../line.ts'

/** A place on the net: the rim is the unit circle, x to the east, y to the north. */
export type NetPoint = readonly [x: number, y: number]

/**
 * Where a line pierces the lower half of a sphere, drawn so that equal areas stay equal (Lambert's azimuthal projection, the Schmidt net).
 *
 * A line without a sense has two ends; the lower one is drawn. A level line is drawn at the end it was given by.
 * @throws InputError
 * Source: r = sqrt(2) sin((90 - plunge) / 2), Snyder, Map Projections - A Working Manual, USGS PP 1395, 1987, azimuthal equal-area (from memory).
 */
export function equalArea(line: Line): NetPoint {
  const { trend, plunge } = checkedLine(line, 'line')
  const [azimuth, down] = plunge < 0 ? [trend + 180, 0 - plunge] : [trend, plunge]
  const r = Math.SQRT2 * Math.sin((90 - down) * Math.PI / 360)
  const turn = azimuth * Math.PI / 180
  return [r * Math.sin(turn), r * Math.cos(turn)]
}

/** The line drawn at a place on the net. The middle is straight down with trend 0. @throws InputError outside the rim */
export function fromEqualArea([x, y]: NetPoint): Line {
  const r = Math.hypot(x, y)
  if (!(r <= 1 + 1e-12)) throw new InputError('point', [x, y], 'a place within the rim, at most 1 from the middle')
  const fromDown = 2 * Math.asin(Math.min(1, r / Math.SQRT2))
  const sine = Math.sin(fromDown)
  return r === 0 ? { trend: 0, plunge: 90 } : directionOf([x / r * sine, y / r * sine, -Math.cos(fromDown)])
}
