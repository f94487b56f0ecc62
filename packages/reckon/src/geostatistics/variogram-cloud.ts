import { finite, positive } from '../core/index.ts'
import type { Sample } from './model.ts'

/** Two samples (their rows as given, a < b), how far apart they are, along which line, and half their squared difference. */
export interface CloudPair {
  readonly a: number
  readonly b: number
  readonly distance: number
  /** Degrees clockwise from +y, in [0, 180): the line between them, either way. */
  readonly azimuth: number
  readonly gamma: number
}

/**
 * Every pair behind a variogram, so that the two samples that make a bin high can be looked at.
 * @param points  rows of [x, y, value]; not modified
 * @param cutoff  pairs further apart than this are left out; n (n - 1) / 2 pairs at most
 * @throws InputError on a coordinate or value that is not finite, or a cutoff not above zero
 * Source: Chauvet, P. (1982) The variogram cloud, 17th APCOM symposium: 757-764 (name and use; from memory).
 */
export function variogramCloud(points: readonly Sample[], cutoff: number): CloudPair[] {
  positive(cutoff, 'cutoff', 'a distance above zero')
  points.forEach((point, i) => point.forEach((value, j) => finite(value, `points[${i}][${j}]`)))
  const pairs: CloudPair[] = []
  for (let a = 0; a < points.length; a++) {
    const [ax, ay, az] = points[a]!
    for (let b = a + 1; b < points.length; b++) {
      const [bx, by, bz] = points[b]!
      const [dx, dy] = [bx - ax, by - ay]
      const distance = Math.hypot(dx, dy)
      if (!(distance > 0 && distance <= cutoff)) continue
      const azimuth = Math.atan2(dx, dy) * 180 / Math.PI
      pairs.push({ a, b, distance, azimuth: azimuth < 0 ? azimuth + 180 : azimuth >= 180 ? azimuth - 180 : azimuth, gamma: 0.5 * (bz - az) ** 2 })
    }
  }
  return pairs
}
