import { finite, InputError, radians } from '../core/index.ts'
import type { Degrees, Enu } from '../core/index.ts'
import { wrapped } from './attitude.ts'
import { unit } from './vector.ts'

/** A direction: trend clockwise from north in [0, 360), plunge positive downward in [-90, 90]. Degrees. */
export interface Line { readonly trend: Degrees, readonly plunge: Degrees }

/** Refuses a direction that can't be one; returns it with the trend in [0, 360). */
export function checkedLine(line: Line, field: string): Line {
  finite(line.trend, `${field}.trend`, 'an azimuth in degrees')
  if (!(line.plunge >= -90 && line.plunge <= 90)) throw new InputError(`${field}.plunge`, line.plunge, '-90 to 90 degrees, down positive')
  return { trend: wrapped(line.trend), plunge: line.plunge }
}

/** Unit vector [east, north, up] of a direction. */
export function vectorOf({ trend, plunge }: Line): Enu {
  const [t, p] = [radians(trend), radians(plunge)]
  return [Math.cos(p) * Math.sin(t), Math.cos(p) * Math.cos(t), -Math.sin(p)]
}

/** Trend and plunge of a vector of any length but zero, as it points: plunge is negative when it points up. Straight up or down has trend 0. */
export function directionOf(vector: Enu): Line {
  const [e, n, u] = unit(vector)
  const level = Math.hypot(e, n)
  const trend = level <= 8 * Number.EPSILON ? 0 : wrapped(Math.atan2(e, n) * 180 / Math.PI)
  return { trend, plunge: Math.atan2(-u, level) * 180 / Math.PI }
}

/** Trend and plunge of a line without a sense: the end that points down; of a level line the end with trend in [0, 180). */
export function lineOf(vector: Enu): Line {
  const line = directionOf(vector[2] > 0 ? [-vector[0], -vector[1], -vector[2]] : vector)
  if (Math.abs(line.plunge) > 1e-13) return line
  return { trend: line.trend >= 180 ? line.trend - 180 : line.trend, plunge: 0 }
}
