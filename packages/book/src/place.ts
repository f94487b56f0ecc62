import type { Quantity } from '@lodebook/reckon/units'

/** Which side of the opening, seen looking from the station towards `toward`, or towards the face when there is none. */
export const sides = ['left rib', 'right rib', 'back', 'sill', 'face', 'middle'] as const
export type Side = typeof sides[number]

/** Which of the two places at which two tapes meet. */
export const turns = ['left', 'right', 'above', 'below'] as const
export type Turn = typeof turns[number]

/** Where an entry is, as the crew says it. */
export type Place =
  /** From a station, so far along towards another, on a side, so high above the sill; `accuracy` is the mark's own, one standard deviation. */
  | { readonly by: 'station', readonly station: string, readonly toward?: string, readonly along?: Quantity, readonly side?: Side, readonly height?: Quantity, readonly accuracy?: Quantity }
  /**
   * By tape from two stations, so high above the sill. Two tapes meet twice: `turn` says on which hand of the line from the first to
   * the second, or whether above or below it when the mark stands upright over or under that line.
   */
  | { readonly by: 'tapes', readonly first: { station: string, distance: Quantity }, readonly second: { station: string, distance: Quantity }, readonly turn?: Turn, readonly height?: Quantity, readonly accuracy?: Quantity }
  /** Metres in the book's grid; `text` as it was written, when that was in words or in another unit. */
  | { readonly by: 'grid', readonly east: number, readonly north: number, readonly up?: number, readonly accuracy?: number, readonly text?: string }
  /** Degrees, north and east positive, WGS 84; elevation and accuracy in metres. */
  | { readonly by: 'gps', readonly latitude: number, readonly longitude: number, readonly elevation?: number, readonly accuracy?: number, readonly text?: string }
  /** Known in words only; it is listed as not placed yet. */
  | { readonly by: 'words', readonly words: string }
