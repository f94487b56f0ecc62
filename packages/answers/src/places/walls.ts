import { textOf, valueOf } from '../read.ts'
import type { Survey } from '../survey/survey.ts'
import type { StationPlace, Walls } from './place-in-space.ts'

/** One set of offsets taped at a station, looking along an azimuth. */
interface Taped extends Partial<Omit<Walls, 'taped'>> { readonly azimuth: number }

/** A usual hand-driven opening, where nothing was taped. */
const usual = { left: 0.7, right: 0.7, up: 0.9, down: 0.9 }

const azimuthBetween = (survey: Survey, from: string, to: string): number | undefined => {
  const a = survey.stations.get(from), b = survey.stations.get(to)
  return a && b ? Math.atan2(b.point[0] - a.point[0], b.point[1] - a.point[1]) * 180 / Math.PI : undefined
}

/**
 * Every station with its place and the offsets to the rock around it, as seen along any azimuth: the set taped nearest to that direction,
 * left and right changed over when looking back. A station at which nothing was taped borrows its neighbour's, and says so.
 */
export function stationPlaces(survey: Survey): ReadonlyMap<string, StationPlace> {
  const taped = new Map<string, Taped[]>()
  const neighbours = new Map<string, Set<string>>()
  const join = (a: string, b: string) => { const set = neighbours.get(a) ?? new Set(); set.add(b); neighbours.set(a, set) }
  for (const shot of survey.shots) {
    const from = textOf(shot, 'from')!, to = textOf(shot, 'to')!
    join(from, to)
    join(to, from)
    const azimuth = azimuthBetween(survey, from, to)
    const offsets = Object.fromEntries((['left', 'right', 'up', 'down'] as const).flatMap((side) => {
      const value = valueOf(shot, side)
      return value === undefined ? [] : [[side, value]]
    }))
    if (azimuth === undefined || Object.keys(offsets).length === 0) continue
    const list = taped.get(from) ?? []
    list.push({ azimuth, ...offsets })
    taped.set(from, list)
  }
  const setsAt = (name: string): { sets: readonly Taped[], own: boolean } => {
    const own = taped.get(name)
    if (own) return { sets: own, own: true }
    return { sets: [...neighbours.get(name) ?? []].flatMap(other => taped.get(other) ?? []), own: false }
  }
  const places = new Map<string, StationPlace>()
  for (const [name, station] of survey.stations) {
    const { sets, own } = setsAt(name)
    const next = [...neighbours.get(name) ?? []]
    places.set(name, {
      point: station.point, sigma: station.sigma, entries: survey.touching.get(name) ?? [],
      walls: azimuth => wallsAlong(sets, own, azimuth), onward: next.length === 1 ? next[0] : undefined,
    })
  }
  return places
}

function wallsAlong(sets: readonly Taped[], own: boolean, azimuth: number): Walls {
  const facing = (set: Taped) => Math.cos((azimuth - set.azimuth) * Math.PI / 180)
  const best = [...sets].sort((a, b) => Math.abs(facing(b)) - Math.abs(facing(a)))[0]
  if (!best) return { ...usual, taped: false }
  const back = facing(best) < 0
  const [left, right] = back ? [best.right, best.left] : [best.left, best.right]
  return {
    left: left ?? usual.left, right: right ?? usual.right, up: best.up ?? usual.up, down: best.down ?? usual.down,
    taped: own && Math.abs(facing(best)) > 0.5,
  }
}
