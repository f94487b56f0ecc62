import type { Enu } from '../../src/core/index.ts'
import type { NetworkShot, Precision } from '../../src/survey/index.ts'
import { azimuthOf, handPrecision } from '../../src/survey/index.ts'
import { randomSource } from './random.ts'

export interface TrueWorkings { readonly points: ReadonlyMap<string, Enu>, readonly legs: readonly (readonly [string, string])[] }

/** Invented workings: drifts with a few raises as a random walk, branches, and loops closed between stations near in order. */
export function inventWorkings(seed: number, stations: number, loops: number, steep = 0.05): TrueWorkings {
  const random = randomSource(seed)
  const points: Enu[] = [[200, 300, 50]]
  const legs: [string, string][] = []
  for (let i = 1; i < stations; i++) {
    const from = random.uniform() < 0.9 ? i - 1 : random.whole(i)
    const heading = 2 * Math.PI * random.uniform()
    const tilt = random.uniform() < steep ? (random.uniform() < 0.5 ? 1 : -1) * (1.1 + 0.45 * random.uniform()) : 0.3 * (random.uniform() - 0.5)
    const length = 4 + 10 * random.uniform()
    const [e, n, u] = points[from]!
    points.push([e + length * Math.cos(tilt) * Math.sin(heading), n + length * Math.cos(tilt) * Math.cos(heading), u + length * Math.sin(tilt)])
    legs.push([`A${from}`, `A${i}`])
  }
  for (let k = 0; k < loops; k++) {
    const i = random.whole(stations - 2)
    legs.push([`A${i}`, `A${Math.min(stations - 1, i + 2 + random.whole(12))}`])
  }
  return { points: new Map(points.map((p, i) => [`A${i}`, p])), legs }
}

type FullShot = NetworkShot & { readonly azimuth: number, readonly backAzimuth: number, readonly inclination: number, readonly backInclination: number }

/** A leg as it would be read without any error. */
export function exactShot(points: ReadonlyMap<string, Enu>, [from, to]: readonly [string, string]): FullShot {
  const [a, b] = [points.get(from)!, points.get(to)!]
  const [e, n, u] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]]
  const azimuth = azimuthOf(Math.atan2(e, n) * 180 / Math.PI)
  const inclination = Math.atan2(u, Math.hypot(e, n)) * 180 / Math.PI
  return { from, to, distance: Math.hypot(e, n, u), azimuth, backAzimuth: azimuthOf(azimuth + 180), inclination, backInclination: -inclination }
}

/** The legs as a crew would read them: each reading errs by itself as `precision` says. */
export function readShots(workings: TrueWorkings, seed: number, precision: Precision = handPrecision) {
  const random = randomSource(seed)
  const clip = (angle: number) => Math.min(90, Math.max(-90, angle))
  return workings.legs.map((leg) => {
    const shot = exactShot(workings.points, leg)
    const rad = Math.PI / 180
    const centring = Math.SQRT2 * precision.centring
    const [cos, sin] = [Math.cos(shot.inclination * rad), Math.sin(shot.inclination * rad)]
    const across = () => Math.hypot(precision.azimuth * cos, precision.levelling * sin, centring / shot.distance / rad) / cos * random.normal()
    const tilt = () => Math.hypot(precision.inclination, centring / shot.distance / rad) * random.normal()
    return {
      ...shot, distance: shot.distance + Math.hypot(precision.distance, precision.distancePerLength * shot.distance, centring) * random.normal(),
      azimuth: azimuthOf(shot.azimuth + across()), backAzimuth: azimuthOf(shot.backAzimuth + across()),
      inclination: clip(shot.inclination + tilt()), backInclination: clip(shot.backInclination + tilt()),
    }
  })
}
