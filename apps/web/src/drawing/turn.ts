import type { Point } from './view.ts'

/**
 * Lays a plan so that an azimuth runs to the right: with the section's azimuth, plan and long section stand under each other, metre under metre.
 * @param azimuth  degrees clockwise from grid north; 90 keeps north up
 */
export function turned(east: number, north: number, azimuth: number): Point {
  const a = azimuth * Math.PI / 180, s = Math.sin(a), c = Math.cos(a)
  return { x: east * s + north * c, y: north * s - east * c }
}

/** The azimuth that one looks along when this azimuth runs to the right. */
export const lookingAlong = (azimuth: number): number => (azimuth + 270) % 360

const winds = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'] as const
/** An azimuth in words, to the nearest of eight. */
export const wind = (azimuth: number): string => winds[Math.round(((azimuth % 360) + 360) % 360 / 45) % 8]!
