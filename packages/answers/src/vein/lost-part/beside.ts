import { radians } from '@lodebook/reckon'
import type { Enu } from '@lodebook/reckon'
import { placeOf } from '../../read.ts'
import type { Survey } from '../../survey/survey.ts'
import type { Sited } from '../vein-data.ts'

/** How well places and stations are known beside each other. */
export interface Beside {
  /** One standard deviation of a station's east, north and up beside the rest of the workings; undefined for one that has no place. */
  readonly station: (name: string) => Enu | undefined
  /** An entry's place with its doubt beside the rest of the workings. */
  readonly place: (sited: Sited) => Sited
}

/**
 * Doubt beside the other places of the workings, instead of doubt on the ground.
 *
 * A GPS fix that is metres off and a declination that is a degree off move and turn vein, fault and face together and part none of them from another.
 * What the stations share so is taken out as the survey tells it: by each station's doubt beside the first tied one, less the turn of the whole map;
 * where it does not tell, by the best known station's own. What a place adds to its station stays.
 */
export function besideEachOther(survey: Survey): Beside {
  const pairs = survey.result.pairs.filter(pair => pair !== null)
  const anchor = pairs[0] && survey.stations.get(pairs[0].a)?.point
  const turn = Math.max(0, ...[...survey.result.instruments.values()].map(i => radians(i.sigma[0])))
  const own = new Map(pairs.flatMap(({ b, relative }) => {
    const point = survey.stations.get(b)?.point
    if (!point || !anchor) return []
    const [e, n] = [turn * (point[0] - anchor[0]), turn * (point[1] - anchor[1])]
    return [[b, [relative[0][0] - n * n, relative[1][1] - e * e, relative[2][2]]] as const]
  }))
  if (pairs[0]) own.set(pairs[0].a, [0, 0, 0])
  const least = [0, 1, 2].map(k => [...survey.stations.values()].reduce((low, station) => Math.min(low, station.sigma[k]! ** 2), Infinity))
  const variance = (name: string, k: number) => Math.max(0, own.get(name)?.[k] ?? survey.stations.get(name)!.sigma[k]! ** 2 - least[k]!)
  const each = (make: (k: number) => number) => [make(0), make(1), make(2)] as const
  return {
    station: name => survey.stations.has(name) ? each(k => Math.sqrt(variance(name, k))) : undefined,
    place: ({ entry, located }) => {
      const place = placeOf(entry)
      const name = place?.by === 'station' ? place.station : place?.by === 'tapes' ? place.first.station : undefined
      const station = name === undefined ? undefined : survey.stations.get(name)
      if (!station) return { entry, located }
      const sigma = each(k => Math.sqrt(Math.max(0, located.sigma[k]! ** 2 - station.sigma[k]! ** 2) + variance(name!, k)))
      return { entry, located: { ...located, sigma } }
    },
  }
}
