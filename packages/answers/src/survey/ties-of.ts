import type { Entry } from '@lodebook/book'
import { isAtNought } from '@lodebook/book'
import type { Tie } from '@lodebook/reckon/survey'
import type { Enu } from '@lodebook/reckon'
import { placeOf, textOf, valueOf } from '../read.ts'
import type { Grid } from './grid.ts'

/** A tie without a stated accuracy: grid coordinates, and a fix of a hand receiver under open sky; metres. Common practice, no source. */
const usual = { grid: 0.05, gps: 5 }

/** Ties that place something, each beside the entry it comes from. */
export interface TiesRead {
  readonly ties: readonly Tie[]
  readonly entries: readonly Entry[]
  readonly cautions: readonly string[]
}

/**
 * The ties as the adjustment takes them. An elevation counts from the tie's own level, else from its place; where neither is written the
 * elevation of the portal stands for it until some tie gives one. A fix at 0, 0 is a receiver without a fix: it is passed over and named.
 */
export function tiesOf(entries: readonly Entry[], grid: Grid, mine: Entry | undefined): TiesRead {
  const portal = (mine && valueOf(mine, 'elevation')) ?? 0
  const found: { readonly tie: Tie, readonly entry: Entry }[] = [], cautions: string[] = []
  for (const entry of entries) {
    const place = placeOf(entry), station = textOf(entry, 'station')!
    if (!place || (place.by !== 'grid' && place.by !== 'gps')) continue
    if (isAtNought(place)) { cautions.push(`The GPS fix of ${station} is 0, 0, which is what a receiver without a fix shows: it places nothing.`); continue }
    const point = place.by === 'grid' ? [place.east, place.north, place.up ?? 0] as const : grid.fromGps(place)
    if (!point) continue
    const sigma = valueOf(entry, 'accuracy') ?? place.accuracy ?? usual[place.by], level = valueOf(entry, 'level')
    const own = place.by === 'grid' ? place.up : place.elevation
    const upSigma = level !== undefined ? valueOf(entry, 'levelAccuracy') ?? sigma : own === undefined ? Infinity : place.by === 'grid' ? sigma : 2 * sigma
    const at: Enu = [point[0], point[1], level ?? (own === undefined ? portal : point[2])]
    found.push({ entry, tie: { station, point: at, sigma: [sigma, sigma, upSigma], ...textOf(entry, 'leaveOut') === 'whole tie' ? { leaveOut: true } : {} } })
  }
  return { ties: found.map(f => f.tie), entries: found.map(f => f.entry), cautions }
}
