import { finite, InputError, positive, radians } from '../core/index.ts'

export interface Heap {
  /** Loose volume that the room takes. */
  readonly holds: number
  /** How high that heap stands. */
  readonly height: number
}

/**
 * What an oblong of level ground holds when muck is heaped on it with all four sides at the angle of repose.
 *
 * The prismoidal rule on the oblong, its middle and its top is exact for such a heap: h (A0 + 4 Am + A1) / 6.
 * @param length  of the room
 * @param width  of the room
 * @param reposeDeg  above 0, below 90
 * @param most  the heap is stopped at this height; it runs up to a ridge when left out
 * @throws InputError for sizes that are not above zero or a slope outside (0, 90)
 */
export function heapRoom(length: number, width: number, reposeDeg: number, most = Infinity): Heap {
  positive(length, 'length')
  positive(width, 'width')
  if (!(most > 0)) throw new InputError('most', most, 'a height above zero')
  const slope = tangent(reposeDeg)
  const height = Math.min(most, Math.min(length, width) / 2 * slope)
  const area = (up: number) => Math.max(0, length - 2 * up / slope) * Math.max(0, width - 2 * up / slope)
  return { holds: height * (area(0) + 4 * area(height / 2) + area(height)) / 6, height }
}

/**
 * How wide across a round heap of that volume is on level ground, and how high: V = pi r³ tan(repose) / 3.
 * @throws InputError for a negative volume or a slope outside (0, 90)
 */
export function coneHeap(volume: number, reposeDeg: number): { readonly across: number, readonly height: number } {
  if (finite(volume, 'volume') < 0) throw new InputError('volume', volume, 'a volume of zero or more')
  const slope = tangent(reposeDeg), radius = Math.cbrt(3 * volume / (Math.PI * slope))
  return { across: 2 * radius, height: radius * slope }
}

function tangent(reposeDeg: number): number {
  if (!(reposeDeg > 0 && reposeDeg < 90)) throw new InputError('repose', reposeDeg, 'an angle above 0 and below 90')
  return Math.tan(radians(reposeDeg))
}
