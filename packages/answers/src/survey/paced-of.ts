import type { Entry } from '@lodebook/book'
import type { NetworkShot } from '@lodebook/reckon/survey'
import type { AssumedFigure } from '../assumptions.ts'
import { numberOf, textOf, valueOf } from '../read.ts'
import type { North } from './north.ts'

/** What a stepped leg is good to: a tenth of its length, five degrees by a compass held on the move; common practice, no source. */
const rough = { share: 0.1, least: 0.5, angle: 5, tilt: 5 }

/** Stepped legs in use, each beside the entry it comes from. */
export interface PacedRead { readonly shots: readonly NetworkShot[], readonly entries: readonly Entry[] }

/**
 * Stepped legs as shots of very low precision, so that what hangs on them has an honest place until somebody surveys there. A leg between two
 * stations that shots or ties already hold is passed over: the survey has replaced it.
 * @param surveyed  stations that shots or ties name
 */
export function pacedOf(legs: readonly Entry[], surveyed: ReadonlySet<string>, north: North, pace: AssumedFigure): PacedRead {
  const entries = legs.filter(leg => !(surveyed.has(textOf(leg, 'from')!) && surveyed.has(textOf(leg, 'to')!)))
  return {
    entries,
    shots: entries.map((leg): NetworkShot => {
      const distance = valueOf(leg, 'distance') ?? (numberOf(leg, 'paces') ?? 1) * pace.value
      return {
        from: textOf(leg, 'from')!, to: textOf(leg, 'to')!, distance,
        azimuth: north.toGrid(valueOf(leg, 'azimuth')!, textOf(leg, 'north') ?? 'magnetic', textOf(leg, 'taken')), inclination: valueOf(leg, 'inclination') ?? 0,
        precision: { distance: Math.max(rough.least, rough.share * distance), azimuth: rough.angle, inclination: rough.tilt },
      }
    }),
  }
}
