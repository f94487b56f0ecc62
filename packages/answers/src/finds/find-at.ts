import type { Entry } from '@lodebook/book'
import { entryTitle } from '../entry-title.ts'
import { numberOf, placeOf, textOf } from '../read.ts'
import type { PlacedEntry } from '../shapes.ts'
import type { StationPlace } from '../places/place-in-space.ts'
import type { CrewUnits } from '../words.ts'
import { nearTo } from './near.ts'
import { placeText } from './place-text.ts'
import type { FindAt, TargetStory } from './shapes.ts'
import { apart, wayTo } from './ways.ts'
import type { Reached } from './ways.ts'

export interface FindsContext {
  readonly stations: ReadonlyMap<string, StationPlace>
  /** Everything that has a place, of any kind. */
  readonly placed: readonly PlacedEntry[]
  readonly ways: ReadonlyMap<string, Reached>
  readonly photos: readonly Entry[]
  readonly stories: ReadonlyMap<string, TargetStory>
  readonly units: CrewUnits
}

/** What lies this near belongs to the same look at the wall, metres. */
const near = 1
/** A danger this near is told, metres. */
const hazardReach = 3
const tellNear = new Set(['sample', 'target', 'relic', 'photo', 'structure', 'width', 'hazard'])

/** One find with what leads back to it. */
export function findAt(entry: Entry, context: FindsContext): FindAt {
  const { stations, placed, ways, photos, stories, units } = context
  const one = placed.find(p => p.entry === entry.id), place = placeOf(entry)
  const around = one ? nearTo(one, placed, hazardReach) : []
  const from = place?.by === 'station' ? stations.get(place.station)?.sigma : place?.by === 'tapes' ? stations.get(place.first.station)?.sigma : undefined
  const stationNear = one && [...stations].map(([name, { point }]) => ({ name, metres: apart(point, one.point) })).sort((a, b) => a.metres - b.metres)[0]
  return {
    entry: entry.id, kind: entry.kind, title: entryTitle(entry), tag: stories.get(entry.id)?.state ?? one?.tag ?? '',
    where: placeText(place, units), point: one?.point,
    doubt: one && Math.sqrt(one.sigma.reduce((sum, s, i) => sum + Math.max(0, s * s - (from?.[i] ?? 0) ** 2), 0)),
    way: wayTo(ways, place, stations), nearestStation: stationNear,
    near: around.filter(n => n.metres <= near && tellNear.has(n.kind)), hazards: around.filter(n => n.kind === 'hazard'),
    photos: photos.filter(photo => textOf(photo, 'of') === entry.id).map(photo => ({ entry: photo.id, x: numberOf(photo, 'markX'), y: numberOf(photo, 'markY') })).reverse(),
  }
}
