import { degrees, radians, type Degrees, type Enu } from '@lodebook/reckon'

export const add = (a: Enu, b: Enu): Enu => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
export const minus = (a: Enu, b: Enu): Enu => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const times = (a: Enu, k: number): Enu => [a[0] * k, a[1] * k, a[2] * k]
export const dot = (a: Enu, b: Enu): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const length = (a: Enu): number => Math.hypot(a[0], a[1], a[2])
export const between = (a: Enu, b: Enu, share: number): Enu => add(a, times(minus(b, a), share))

/** Unit vector of a trend and a plunge (down positive). */
export function direction(trend: Degrees, plunge: Degrees = 0): Enu {
  const t = radians(trend), p = radians(plunge)
  return [Math.sin(t) * Math.cos(p), Math.cos(t) * Math.cos(p), -Math.sin(p)]
}

/** Azimuth in [0, 360) of a vector's level part. */
export const azimuthOf = (a: Enu): Degrees => turn(degrees(Math.atan2(a[0], a[1])))
/** Up-positive angle of a vector above the level. */
export const inclinationOf = (a: Enu): Degrees => degrees(Math.atan2(a[2], Math.hypot(a[0], a[1])))
/** Any angle brought to [0, 360). */
export const turn = (angle: Degrees): Degrees => ((angle % 360) + 360) % 360
/** The level unit vector on the right hand of someone who looks along an azimuth. */
export const rightOf = (azimuth: Degrees): Enu => direction(azimuth + 90)

export interface Plane { readonly strike: Degrees, readonly dip: Degrees, readonly point: Enu }
/** Unit axes of a plane: along its strike (right-hand rule), down its dip, and its normal, which points up. */
export function axesOf(plane: Pick<Plane, 'strike' | 'dip'>): { along: Enu, down: Enu, normal: Enu } {
  return {
    along: direction(plane.strike),
    down: direction(plane.strike + 90, plane.dip),
    normal: direction(plane.strike + 90, plane.dip - 90),
  }
}
/** Strike and dip of the plane whose normal is given; either sense will do. */
export function planeOf(normal: Enu): { strike: Degrees, dip: Degrees } {
  const up = normal[2] < 0 ? times(normal, -1) : normal
  return { strike: turn(azimuthOf(up) - 90), dip: degrees(Math.atan2(Math.hypot(up[0], up[1]), up[2])) }
}
