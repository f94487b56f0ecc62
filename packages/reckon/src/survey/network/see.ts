import type { Sight, SightReading } from './sight.ts'
import type { Enu } from '../../core/index.ts'
import { signedRadians } from '../angles.ts'
import { dot3 } from '../matrix3.ts'

/** A reading against the present points: radians across the line of sight, radians, or length. */
export interface Seen {
  /** Read minus computed. */
  readonly residual: number
  /** How the computed reading changes with `to` minus `from`. */
  readonly by: Enu
  /** How it changes with the instrument's own error. */
  readonly shared: number
}

/** Nearer together than this share of what was taped, two points no longer give a direction to linearise about. */
const leastShare = 1e-3

/**
 * What a reading is compared about: the line between the present points, or the sight as it was read. The second is linear, and so good for a
 * first solution from anywhere; the first is what least squares is about.
 */
export type Line = 'points' | 'sight'

/** @param d  `to` minus `from` at the present points */
export function see(sight: Sight, { reading, value, sign }: SightReading, d: Enu, line: Line): Seen {
  const asRead = line === 'sight'
  if (reading === 'distance') return asRead ? seeAlong(sight, value, d) : seeDistance(sight, value, d)
  const across = reading === 'azimuth' || reading === 'backAzimuth'
  if (sight.steep || asRead) {
    if (across) return seeOffset(sight, sight.cosine * signedRadians(value - sight.azimuth), sight.across, d, sight.cosine)
    return seeOffset(sight, value - sight.inclination, sight.rise, d, sign)
  }
  const least = leastShare * sight.distance
  const level = Math.max(Math.hypot(d[0], d[1]), least)
  if (across) {
    const factor = sight.cosine / (level * level)
    return { residual: sight.cosine * signedRadians(value - Math.atan2(d[0], d[1])), by: [d[1] * factor, -d[0] * factor, 0], shared: sight.cosine }
  }
  const squared = level * level + d[2] * d[2]
  const tilt = d[2] / (squared * level)
  return { residual: value - Math.atan2(d[2], level), by: [-d[0] * tilt, -d[1] * tilt, level / squared], shared: sign }
}

/** The second level offset of a plumbed shot, which has no reading of its own. */
export const seePlumb = (sight: Sight, d: Enu): Seen => seeOffset(sight, 0, sight.across, d, 0)

/** One part of the vector as read, as a length. */
export function seeWeak(sight: Sight, axis: 'along' | 'across' | 'rise', d: Enu): Seen {
  return { residual: (axis === 'along' ? sight.distance : 0) - dot3(d, sight[axis]), by: sight[axis], shared: 0 }
}

function seeDistance(sight: Sight, value: number, d: Enu): Seen {
  const length = Math.hypot(d[0], d[1], d[2])
  if (length < leastShare * sight.distance) return seeAlong(sight, value, d)
  return { residual: value - length, by: [d[0] / length, d[1] / length, d[2] / length], shared: length }
}

/** A distance as its part along the sight. */
const seeAlong = ({ along }: Sight, value: number, d: Enu): Seen => ({ residual: value - dot3(d, along), by: along, shared: value })

/** An angle as the offset square to the sight, over its length. */
function seeOffset(sight: Sight, value: number, axis: Enu, d: Enu, shared: number): Seen {
  const s = sight.distance
  return { residual: value - dot3(d, axis) / s, by: [axis[0] / s, axis[1] / s, axis[2] / s], shared }
}
