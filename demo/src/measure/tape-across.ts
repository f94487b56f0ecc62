import { degrees, type Degrees, type Enu } from '@lodebook/reckon'
import type { Random } from '../random.ts'
import type { Exposure } from '../truth/exposure.ts'
import type { Vein } from '../truth/vein.ts'
import { azimuthOf, direction, dot, rightOf } from '../truth/vectors.ts'

/** How a tape lay across a vein, and how much longer it shows the vein than it truly is. */
export interface TapeAcross {
  readonly direction: 'square to the vein' | 'level across the heading' | 'upright' | 'along a line'
  /** From true north, and down positive; only for 'along a line'. */
  readonly trend?: Degrees
  readonly plunge?: Degrees
  readonly stretch: number
}

/** Chooses how the tape lay. In a raise it can only be held square or along a line. */
export function tapeAcross(rng: Random, vein: Vein, spot: Exposure, square: number): TapeAcross {
  const { strike, dip } = vein.attitude(spot.vein), normal = direction(strike + 90, dip - 90), drift = spot.section.working
  const steep = /raise|Winze/.test(drift)
  const way = rng.weighted([['square to the vein', square], ['level across the heading', steep ? 0 : 0.5 * (1 - square)], ['upright', steep ? 0 : 0.25 * (1 - square)],
    ['along a line', steep ? 1 - square : 0.25 * (1 - square)]] as const)
  const stretch = (line: Enu) => 1 / Math.abs(dot(line, normal))
  switch (way) {
    case 'square to the vein': return { direction: way, stretch: 1 / Math.cos(rng.normal(0, 5) * Math.PI / 180) }
    case 'level across the heading': return { direction: way, stretch: stretch(rightOf(spot.section.azimuth)) }
    case 'upright': return { direction: way, stretch: stretch([0, 0, 1]) }
    case 'along a line': {
      // Roughly towards the footwall, as far from square as a tape in a cramped place may be.
      const trend = azimuthOf([-normal[0], -normal[1], 0]) + rng.normal(0, 18), plunge = degrees(Math.asin(normal[2])) + rng.normal(0, 14)
      return { direction: way, trend, plunge, stretch: stretch(direction(trend, plunge)) }
    }
  }
}
