import type { Enu } from '@lodebook/reckon'
import type { StationPlace } from '../places/place-in-space.ts'
import { textOf } from '../read.ts'
import { sub } from '../survey/survey.ts'
import type { Survey } from '../survey/survey.ts'
import type { Way } from './way-in.ts'

/** One surveyed leg underground as air meets it: its length, its section as a rectangle from the taped offsets, and how much it rises. */
export interface AirLeg {
  readonly from: string
  readonly to: string
  readonly length: number
  readonly width: number
  readonly height: number
  readonly rise: number
  readonly taped: boolean
  readonly entry: string
}

export interface Section { readonly width: number, readonly height: number, readonly taped: boolean }

const azimuthOf = (d: Enu): number => Math.atan2(d[0], d[1]) * 180 / Math.PI

/** Width and height of the heading at a station, looking along an azimuth. */
export function sectionAt(place: StationPlace, azimuth: number): Section {
  const { left, right, up, down, taped } = place.walls(azimuth)
  return { width: Math.max(0.3, left + right), height: Math.max(0.3, up + down), taped }
}

/** The legs of the way in, each once. */
export function airLegs(survey: Survey, stations: ReadonlyMap<string, StationPlace>, way: Way): readonly AirLeg[] {
  const inside = new Set(way.stations.map(s => s.name)), seen = new Set<string>()
  return survey.shots.flatMap((shot): AirLeg[] => {
    const from = textOf(shot, 'from')!, to = textOf(shot, 'to')!, a = stations.get(from), b = stations.get(to), key = [from, to].sort().join('\n')
    if (!a || !b || !inside.has(from) || !inside.has(to) || seen.has(key)) return []
    seen.add(key)
    const line = sub(b.point, a.point), length = Math.hypot(...line)
    if (!(length > 0)) return []
    const [s, t] = [sectionAt(a, azimuthOf(line)), sectionAt(b, azimuthOf(line))]
    return [{ from, to, length, width: (s.width + t.width) / 2, height: (s.height + t.height) / 2, rise: line[2], taped: s.taped && t.taped, entry: shot.id }]
  })
}

/** The section at the portal, looking in. */
export function portalSection(stations: ReadonlyMap<string, StationPlace>, way: Way, legs: readonly AirLeg[]): Section | undefined {
  const place = stations.get(way.portal), first = legs.find(l => l.from === way.portal || l.to === way.portal)
  const next = first && stations.get(first.from === way.portal ? first.to : first.from)
  return place && next && sectionAt(place, azimuthOf(sub(next.point, place.point)))
}
