import { gasActions } from './gas-action.ts'
import { gasDoubts, refuseImpossible, type GasDoubt } from './gas-doubts.ts'
import { gases, gasNames, type Gas, type GasReadings } from './gas.ts'
import { gasLimits, type GasLimit } from './gas-limits.ts'
import { isOutside, worstFirst } from './worst-first.ts'

/** A reading outside a published limit. */
export interface GasFinding extends GasLimit {
  readonly value: number
  readonly unit: '%' | 'ppm'
  readonly action: string
}

export interface GasCheck {
  /** Worst first. Of the effects of one gas only the gravest. */
  readonly findings: readonly GasFinding[]
  readonly notRead: readonly Gas[]
  readonly doubts: readonly GasDoubt[]
  /** What these readings do not say. Never empty. */
  readonly cautions: readonly string[]
}

/**
 * Holds a set of readings against published limits.
 *
 * It says what is outside which limit and what was not read; it never says that air may be breathed.
 * @param readings  O2 and CH4 in per cent, the others in ppm; what was not read is left out
 * @param path  where the readings stand in the input, for errors
 * @throws InputError for readings that can't be, such as oxygen of 209, with what was probably meant
 */
export function gasCheck(readings: GasReadings, path = 'readings'): GasCheck {
  refuseImpossible(readings, path)
  const outside = gasLimits.flatMap((limit): readonly GasFinding[] => {
    const value = readings[limit.gas]
    return value !== undefined && isOutside(value, limit) ? [{ ...limit, value, unit: gases[limit.gas].unit, action: gasActions[limit.kind] }] : []
  })
  const findings = worstFirst(outside, ({ gas }) => gas)
  const notRead = gasNames.filter(gas => readings[gas] === undefined)
  return { findings, notRead, doubts: gasDoubts(readings), cautions: cautions(findings.length, notRead) }
}

function cautions(found: number, notRead: readonly Gas[]): readonly string[] {
  return [
    ...found === 0 ? ['No reading here is outside a limit of this table. That is not leave to go in.'] : [],
    ...notRead.length > 0 ? [`Not read: ${notRead.map(gas => gases[gas].name).join(', ')}. A gas that was not read may be there.`] : [],
    'Lack of oxygen has no smell. Carbon dioxide, hydrogen sulphide and nitrogen dioxide lie low, in dead ends and winzes; methane gathers at the back. '
    + 'Read at sill, waist and back, ahead of you as you go.',
    'A reading holds for its place and moment, and for a meter that was bump-tested. Air changes with weather, water and work.',
    'Limits are published United States values. Local rules and licensed people decide.',
  ]
}
