import { finite, InputError } from '../core/index.ts'
import { substances, type AirLimit, type Substance } from './air-limits.ts'
import { gasActions } from './gas-action.ts'
import { isOutside, worstFirst } from './worst-first.ts'

/** Readings of one place and moment, each in its substance's own unit. */
export type AirReadings = Readonly<Partial<Record<Substance, number>>>

export interface AirFinding extends AirLimit {
  readonly value: number
  readonly unit: typeof substances[Substance]
  readonly action: string
}

/** What to do where the general words for a sort of limit do not fit. Common practice, no source. */
const particular: Readonly<Partial<Record<Substance, Partial<Record<AirLimit['kind'], string>>>>> = {
  methane: {},
  'radon progeny': {
    ceiling: 'Nobody works here until air has been moved and it has been sampled again. It builds up where air stands still.',
    act: 'Sample again within the week, move air, keep the hours short and write them down.', 'shift average': 'Sample again, move air, write down the hours each person spends here.',
  },
  'respirable quartz dust': {
    'shift average': 'Wet the rock before it is broken, mucked or swept; drill and break wet; wear a fitted respirator; sample again. Silica dust is not coughed out again.',
    act: 'Find what makes the dust and wet it. Sample again.',
  },
  'wet bulb': { act: 'Move air, drink, rest often, nobody works alone. Dizzy or no longer sweating: out, cool, and call for help.', withdraw: 'Stop work and come out into cooler air.' },
}

/** What to do about a value outside a limit. */
export const actionFor = (limit: Pick<AirLimit, 'substance' | 'kind'>): string =>
  particular[limit.substance]?.[limit.kind]
  ?? (limit.kind === 'act' && limit.substance !== 'methane' ? 'Find where it comes from, move air, and read again before going on.'
    : limit.kind === 'withdraw' && limit.substance !== 'methane' ? 'Everyone out into open air. Nobody goes back until air has been moved and read again.' : gasActions[limit.kind])

/**
 * Holds readings against limits, worst first. Silent on what is within them: that is no leave to go in.
 * @throws InputError for a value that is not a finite number of zero or more
 */
export function airCheck(readings: AirReadings, limits: readonly AirLimit[]): readonly AirFinding[] {
  for (const [substance, value] of Object.entries(readings)) {
    if (finite(value, substance) < 0 && substance !== 'wet bulb') throw new InputError(substance, value, 'zero or more')
  }
  return worstFirst(limits.flatMap((limit): readonly AirFinding[] => {
    const value = readings[limit.substance]
    return value !== undefined && isOutside(value, limit) ? [{ ...limit, value, unit: substances[limit.substance], action: actionFor(limit) }] : []
  }), ({ substance }) => substance)
}

/**
 * Working levels that so much radon gas comes to when its progeny have grown in fully: 1 WL for 3,700 Bq/m3 (100 pCi/L).
 * The most it can be; fresh air holds less progeny for the same gas. Standard definition, from memory.
 */
export const workingLevelsAtMost = (becquerelPerM3: number): number => finite(becquerelPerM3, 'radon') / 3700
