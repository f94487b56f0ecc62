import type { Degrees } from '../core/index.ts'

/** An azimuth brought into [0, 360). */
export const azimuthOf = (angle: Degrees): Degrees => {
  const turned = angle % 360
  const positive = turned < 0 ? turned + 360 : turned
  return positive === 360 ? 0 : positive // a tiny negative angle rounds up to 360
}

/** An angle, or a difference of two azimuths, brought into (-180, 180]. */
export const signedAngle = (angle: Degrees): Degrees => {
  const turned = azimuthOf(angle)
  return turned > 180 ? turned - 360 : turned
}

/** Radians brought into (-pi, pi]. */
export const signedRadians = (angle: number): number => {
  const turned = angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI))
  return turned <= -Math.PI ? turned + 2 * Math.PI : turned
}
