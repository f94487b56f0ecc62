import type { Quantity } from '@lodebook/reckon/units'

/** Which side of the opening, seen looking from the station towards `toward`, or towards the face when there is none. */
export const sides = ['left rib', 'right rib', 'back', 'sill', 'face', 'middle'] as const
export type Side = typeof sides[number]

/** Where an entry is, as the crew says it. */
export type Place =
  /** From a station, so far along towards another, on a side, so high above the sill. */
  | { readonly by: 'station', readonly station: string, readonly toward?: string, readonly along?: Quantity, readonly side?: Side, readonly height?: Quantity }
  /** By tape from two stations, on a side, so high above the sill; `turn` says on which hand of the line from the first to the second. */
  | { readonly by: 'tapes', readonly first: { station: string, distance: Quantity }, readonly second: { station: string, distance: Quantity }, readonly turn?: 'left' | 'right', readonly height?: Quantity }
  /** Metres in the book's grid; `text` as it was written, when that was in words or in another unit. */
  | { readonly by: 'grid', readonly east: number, readonly north: number, readonly up?: number, readonly accuracy?: number, readonly text?: string }
  /** Degrees, north and east positive, WGS 84; elevation and accuracy in metres. */
  | { readonly by: 'gps', readonly latitude: number, readonly longitude: number, readonly elevation?: number, readonly accuracy?: number, readonly text?: string }
  /** Known in words only; it is listed as not placed yet. */
  | { readonly by: 'words', readonly words: string }
