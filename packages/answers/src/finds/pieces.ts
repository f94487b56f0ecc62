/** Part of a leg between two stations, metres from the one whose name comes first in the alphabet. */
export interface Piece { readonly leg: string, readonly low: number, readonly high: number }

/**
 * A part of the leg from a to b.
 * @param metres  its whole length
 * @param from,to  metres from a, in either order
 */
export function pieceOf(a: string, b: string, metres: number, from: number, to: number): Piece {
  const turn = (x: number) => a < b ? x : metres - x
  return { leg: a < b ? `${a}\n${b}` : `${b}\n${a}`, low: Math.min(turn(from), turn(to)), high: Math.max(turn(from), turn(to)) }
}

/** Metres that the pieces cover together, what several of them cover counted once. */
export function covered(pieces: readonly Piece[]): number {
  const legs = new Map<string, Piece[]>()
  for (const piece of pieces) legs.set(piece.leg, [...legs.get(piece.leg) ?? [], piece])
  return [...legs.values()].reduce((sum, list) => {
    let end = -Infinity, metres = 0
    for (const { low, high } of list.sort((a, b) => a.low - b.low)) {
      metres += Math.max(0, high - Math.max(low, end))
      end = Math.max(end, high)
    }
    return sum + metres
  }, 0)
}
