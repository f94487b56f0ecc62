import type { Enu } from '@lodebook/reckon'
import { passageSection } from '@lodebook/reckon/survey'
import type { PassageSection, SectionPoint } from '@lodebook/reckon/survey'
import type { StationPlace } from '../places/located.ts'

/** A sight to the rock, from where and to where in the grid. */
export interface WallHit { readonly entry: string, readonly from: string, readonly point: Enu, readonly on: string }

/** The opening at a station, cut square to the way it runs; seen looking along `azimuth`. */
export interface CrossSection extends PassageSection {
  readonly station: string
  readonly azimuth: number
  readonly point: Enu
  /** Whether offsets were taped here, and how many sights to the wall are in it. */
  readonly taped: boolean
  readonly hits: number
  readonly from: readonly string[]
}

/** Sights that meet the rock further than this before or behind the cut are not in it, metres. */
const beforeCut = 1

/**
 * The cross section at a station from its offsets and from the wall shots that hit near it.
 * @param azimuth  the way the opening runs there, degrees
 */
export function crossSectionAt(name: string, station: StationPlace, azimuth: number, hits: readonly WallHit[]): CrossSection {
  const a = azimuth * Math.PI / 180, s = Math.sin(a), c = Math.cos(a), walls = station.walls(azimuth), [e0, n0, u0] = station.point
  const near = hits.flatMap((hit): { readonly at: SectionPoint, readonly entry: string }[] => {
    const [e, n, u] = [hit.point[0] - e0, hit.point[1] - n0, hit.point[2] - u0]
    return hit.on !== 'face' && Math.abs(e * s + n * c) <= beforeCut ? [{ at: { right: e * c - n * s, up: u }, entry: hit.entry }] : []
  })
  return {
    ...passageSection(walls, near.map(hit => hit.at)), station: name, azimuth, point: station.point, taped: walls.taped, hits: near.length,
    from: [...station.entries, ...near.map(hit => hit.entry)],
  }
}
