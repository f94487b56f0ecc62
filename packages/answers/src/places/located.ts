import type { Enu } from '@lodebook/reckon'
import type { Grid } from '../survey/grid.ts'

/** Where a station is and how far it is to the rock around it, as the place-finder needs it. */
export interface StationPlace {
  readonly point: Enu
  readonly sigma: Enu
  readonly entries: readonly string[]
  /** Offsets to the rock seen looking along a direction: level, azimuth in degrees. */
  readonly walls: (azimuth: number) => Walls
  /** The next station on, when only one way leads on. */
  readonly onward: string | undefined
}

export interface Walls { readonly left: number, readonly right: number, readonly up: number, readonly down: number, readonly taped: boolean }

export interface Located { readonly point: Enu, readonly sigma: Enu, readonly how: string, readonly from: readonly string[] }
export interface Unlocated { readonly why: string }
export const isLocated = (found: Located | Unlocated): found is Located => 'point' in found

export interface PlaceContext {
  readonly stations: ReadonlyMap<string, StationPlace>
  readonly grid: Grid
  /** One standard deviation of a mark taped along a heading, m. */
  readonly precision: number
  /** Stations that are surveyed but joined to nothing. */
  readonly adrift?: ReadonlySet<string>
}

export const plus = (a: Enu, b: Enu, times = 1): Enu => [a[0] + times * b[0], a[1] + times * b[1], a[2] + times * b[2]]
export const together = (a: Enu, ...more: readonly number[]): Enu => a.map(value => Math.hypot(value, ...more)) as unknown as Enu

/** Why a station has no place. */
export const noStation = (name: string, { adrift }: PlaceContext): string => adrift?.has(name)
  ? `station ${name} is surveyed, but no shot or tie joins it to the rest` : `station ${name} has not been surveyed`
