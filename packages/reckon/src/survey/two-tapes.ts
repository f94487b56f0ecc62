import type { Enu } from '../core/index.ts'
import { InputError, positive } from '../core/index.ts'

/** Two taped distances from two known points, and what tells the two places apart at which they meet. */
export interface TwoTapes {
  readonly a: Enu
  readonly b: Enu
  /** Slope distances from a and from b, in the unit of the points. */
  readonly fromA: number
  readonly fromB: number
  /**
   * `left` and `right`: of the line from a to b, at the elevation `up`. `above` and `below`: in the upright plane through a and b.
   * Left out: both places.
   */
  readonly turn?: 'left' | 'right' | 'above' | 'below' | undefined
  /** Elevation of the mark, for left and right; that of a unless given. */
  readonly up?: number | undefined
  /** One standard deviation of each tape. */
  readonly sigma: number
}

export interface TapedPoint {
  readonly point: Enu
  /** One standard deviation of east, north and up from the two tapes alone. */
  readonly sigma: Enu
}

/** Tapes that miss each other by less than this many standard deviations of both together are taken as just touching. */
const slack = 4

/**
 * Where two tapes meet: the marks that are so far from a and so far from b.
 * @returns one point or two, the left or lower one first; none when the tapes do not reach each other, or a and b stand plumb over one another, where
 *          tapes meet in a circle
 * @throws InputError for a distance or sigma that is not above zero
 * Errors are carried by moving each tape by its sigma and solving again; near the line between the points they grow without bound, and the
 * move is then as large as the tapes' slack allows.
 * Source: intersection of two circles, plane trigonometry.
 */
export function twoTapes(given: TwoTapes): readonly TapedPoint[] {
  positive(given.fromA, 'fromA', 'a distance above zero')
  positive(given.fromB, 'fromB', 'a distance above zero')
  if (!(given.sigma > 0)) throw new InputError('sigma', given.sigma, 'a standard deviation above zero')
  const points = meet(given)
  return points.map(({ hand, point }) => {
    const moved = (['fromA', 'fromB'] as const).map((tape) => {
      const again = meet({ ...given, [tape]: given[tape] + given.sigma }).find(one => one.hand === hand)?.point ?? point
      return [again[0] - point[0], again[1] - point[1], again[2] - point[2]] as const
    })
    const total = (i: 0 | 1 | 2): number => Math.hypot(...moved.map(move => move[i]))
    return { point, sigma: [total(0), total(1), total(2)] }
  })
}

interface Meeting { readonly hand: -1 | 1, readonly point: Enu }

function meet({ a, b, fromA, fromB, turn, up = a[2], sigma }: TwoTapes): readonly Meeting[] {
  const d: Enu = [b[0] - a[0], b[1] - a[1], b[2] - a[2]], level = Math.hypot(d[0], d[1]), upright = turn === 'above' || turn === 'below'
  const base = upright ? Math.hypot(level, d[2]) : level
  if (!(level > 1e-6 * Math.max(fromA, fromB))) return []
  // In the plane of the tapes: x along the line from a to b, y square to it.
  const flat = (slope: number, rise: number) => slope * slope - rise * rise
  const ra2 = upright ? fromA * fromA : flat(fromA, up - a[2]), rb2 = upright ? fromB * fromB : flat(fromB, up - b[2])
  const least = slack * Math.SQRT2 * sigma, x = (ra2 - rb2 + base * base) / (2 * base), y2 = ra2 - x * x
  // Half of the gap by which the tapes miss, as a length.
  const ra = Math.sqrt(Math.max(0, ra2)), rb = Math.sqrt(Math.max(0, rb2)), apart = Math.max(base - ra - rb, Math.abs(ra - rb) - base)
  if (Math.min(ra2, rb2) < -least * Math.max(fromA, fromB) || apart > least) return []
  const y = Math.sqrt(Math.max(0, y2)), east = d[0] / level, north = d[1] / level
  const at = (hand: -1 | 1): Meeting => ({ hand, point: upright
    ? [a[0] + (x * level - hand * y * d[2]) / base * east, a[1] + (x * level - hand * y * d[2]) / base * north, a[2] + (x * d[2] + hand * y * level) / base]
    : [a[0] + x * east + hand * y * north, a[1] + x * north - hand * y * east, up] })
  const hands: readonly (-1 | 1)[] = turn === undefined ? [-1, 1] : turn === 'left' || turn === 'below' ? [-1] : [1]
  return hands.map(at)
}
