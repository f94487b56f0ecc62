import type { Degrees, Enu } from '@lodebook/reckon'
import { add, azimuthOf, between, length, minus, rightOf, times } from './vectors.ts'
import type { Offsets, Station, Working } from './working.ts'

/** A cut across a working at one place between two stations, as a crew finds it with a tape stretched from one to the other. */
export interface Section {
  readonly working: string
  readonly from: string
  readonly to: string
  /** Along the tape from the first station, metres. */
  readonly along: number
  /** On the tape. */
  readonly point: Enu
  readonly azimuth: Degrees
  readonly right: Enu
  readonly offsets: Offsets
}

/** The section at so many metres from a working's start. */
export function sectionAt(stations: ReadonlyMap<string, Station>, working: Working, distance: number): Section {
  let i = 1
  while (i < working.chainage.length - 1 && working.chainage[i]! < distance) i++
  const from = working.stations[i - 1]!, to = working.stations[i]!, a = stations.get(from)!, b = stations.get(to)!
  const share = (distance - working.chainage[i - 1]!) / (working.chainage[i]! - working.chainage[i - 1]!)
  const line = minus(b.point, a.point), azimuth = azimuthOf(line)
  return {
    working: working.name, from, to, along: share * length(line), point: between(a.point, b.point, share), azimuth, right: rightOf(azimuth),
    offsets: blend(a.offsets, b.offsets, share),
  }
}

function blend(a: Offsets | undefined, b: Offsets | undefined, share: number): Offsets {
  const from = a ?? b ?? { left: 0, right: 0, up: 0, down: 0 }, to = b ?? from
  const mix = (p: number, q: number) => p + (q - p) * share
  return { left: mix(from.left, to.left), right: mix(from.right, to.right), up: mix(from.up, to.up), down: mix(from.down, to.down) }
}

/** A point on a wall of a section: so far to the right of the tape, so high above the sill. */
export const onSection = (s: Section, aside: number, height: number): Enu =>
  add(add(s.point, times(s.right, aside)), [0, 0, height - s.offsets.down])
