import type { Degrees, Enu } from '@lodebook/reckon'
import { azimuthOf, between, length, minus } from './vectors.ts'

/** The middle of a working's sill as a line, and places along it by distance from its start. */
export interface Path {
  readonly points: readonly Enu[]
  readonly length: number
  at(distance: number): { readonly point: Enu, readonly azimuth: Degrees }
}

export function makePath(points: readonly Enu[]): Path {
  const starts = [0]
  for (let i = 1; i < points.length; i++) starts.push(starts[i - 1]! + length(minus(points[i]!, points[i - 1]!)))
  const whole = starts.at(-1)!
  return {
    points, length: whole,
    at(distance) {
      let i = 1
      while (i < points.length - 1 && starts[i]! < distance) i++
      const a = points[i - 1]!, b = points[i]!, share = (distance - starts[i - 1]!) / (starts[i]! - starts[i - 1]!)
      return { point: between(a, b, share), azimuth: azimuthOf(minus(b, a)) }
    },
  }
}
