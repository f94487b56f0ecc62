import type { Entry } from '@lodebook/book'
import { reduceShot } from '@lodebook/reckon/survey'
import { textOf, valueOf } from '../read.ts'
import type { Survey } from '../survey/survey.ts'
import type { WallHit } from './cross-section.ts'

/** Where the crew's sights to the rock end, for those whose station has a place. */
export function wallHits(shots: readonly Entry[], instruments: ReadonlyMap<string, Entry>, survey: Survey): readonly WallHit[] {
  return shots.flatMap((shot): WallHit[] => {
    const from = textOf(shot, 'from')!, station = survey.stations.get(from), azimuth = valueOf(shot, 'azimuth')
    if (!station) return []
    const compass = instruments.get(textOf(shot, 'compass') ?? ''), index = (compass && valueOf(compass, 'correction')) ?? 0
    const tilt = (compass && valueOf(compass, 'inclinationCorrection')) ?? 0
    const grid = azimuth === undefined ? 0 : survey.north.toGrid(azimuth + index, textOf(shot, 'north') ?? 'magnetic', textOf(shot, 'taken'))
    const inclination = Math.max(-90, Math.min(90, (valueOf(shot, 'inclination') ?? 0) + tilt))
    const { vector: [e, n, u] } = reduceShot({ from, to: `${from} wall`, distance: valueOf(shot, 'distance')!, azimuth: grid, inclination })
    const [pe, pn, pu] = station.point
    return [{ entry: shot.id, from, on: textOf(shot, 'on') ?? 'not said', point: [pe + e, pn + n, pu + u] }]
  })
}
