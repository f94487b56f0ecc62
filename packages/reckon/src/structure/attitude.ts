import { finite, InputError, radians } from '../core/index.ts'
import type { Degrees, Enu } from '../core/index.ts'
import { cross, length, unit } from './vector.ts'

/** How a plane lies: strike by the right-hand rule (dip is to the right of the strike direction), dip in [0, 90]. Degrees. */
export interface Attitude { readonly strike: Degrees, readonly dip: Degrees }

/** The three unit vectors of a plane: along the strike, down the dip, and upward square to it. along x down points down; normal = down x along. */
export interface PlaneAxes { readonly strike: Enu, readonly dip: Enu, readonly normal: Enu }

/** Below this sine a plane counts as level and its strike as 0, or as upright and its strike as the one below 180: rounding, not geology. */
const levelSine = 8 * Number.EPSILON

/** An azimuth in [0, 360). */
export function wrapped(azimuth: Degrees): Degrees {
  const turned = ((azimuth % 360) + 360) % 360
  return turned === 360 ? 0 : turned
}

/** Refuses an attitude that can't be one; returns it with the strike in [0, 360). */
export function checkedAttitude(attitude: Attitude, field: string): Attitude {
  finite(attitude.strike, `${field}.strike`, 'an azimuth in degrees')
  if (!(attitude.dip >= 0 && attitude.dip <= 90)) throw new InputError(`${field}.dip`, attitude.dip, '0 to 90 degrees')
  return { strike: wrapped(attitude.strike), dip: attitude.dip }
}

/** Unit vectors of a plane from its strike and dip. */
export function axesOf({ strike, dip }: Attitude): PlaneAxes {
  const [s, d] = [radians(strike), radians(dip)]
  const [se, sn] = [Math.sin(s), Math.cos(s)]
  const [sd, cd] = [Math.sin(d), Math.cos(d)]
  // Looking along the strike, the dip runs to the right: level direction (sn, -se).
  return { strike: [se, sn, 0], dip: [sn * cd, -se * cd, -sd], normal: [sn * sd, -se * sd, cd] }
}

/** The upward unit normal. It leans to the side the plane dips to. */
export const normalOf = (attitude: Attitude): Enu => axesOf(attitude).normal

/**
 * Strike and dip of the plane square to a vector. The vector may point up or down and have any length but zero.
 *
 * A level plane gets strike 0. An upright plane, whose dip could be written either way, gets the strike in [0, 180).
 */
export function attitudeOf(normal: Enu): Attitude {
  const flipped: Enu = normal[2] < 0 ? [-normal[0], -normal[1], -normal[2]] : normal
  const [e, n, u] = unit(flipped)
  const level = Math.hypot(e, n)
  if (level <= levelSine) return { strike: 0, dip: 0 }
  const strike = wrapped(Math.atan2(-n, e) * 180 / Math.PI)
  if (u <= levelSine) return { strike: strike >= 180 ? strike - 180 : strike, dip: 90 }
  return { strike, dip: Math.atan2(level, u) * 180 / Math.PI }
}

/** Dip direction: the azimuth the plane falls to. */
export const dipDirectionOf = (strike: Degrees): Degrees => wrapped(strike + 90)
/** Strike by the right-hand rule from a dip direction. */
export const strikeFrom = (dipDirection: Degrees): Degrees => wrapped(dipDirection - 90)

/** Angle between two planes, [0, 90] degrees. */
export function angleBetween(a: Attitude, b: Attitude): Degrees {
  const [m, n] = [normalOf(a), normalOf(b)]
  const cosine = Math.abs(m[0] * n[0] + m[1] * n[1] + m[2] * n[2])
  return Math.atan2(length(cross(m, n)), cosine) * 180 / Math.PI
}
