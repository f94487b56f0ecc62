import { finite, positive } from '../core/index.ts'
import { checkedValues } from '../statistics/index.ts'

export type ControlRule = '1_2s' | '1_3s' | '2_2s' | 'R_4s' | '4_1s' | '10_x'

export interface Breach {
  readonly rule: ControlRule
  /** Place in the run, from 0, of the value that completes the pattern. */
  readonly at: number
  /** '1_2s' only warns; the others reject. */
  readonly warning: boolean
}

/** Two wordings of R_4s exist: one value beyond +2s and one beyond -2s, or the two more than 4s apart. */
export type RangeWording = 'pair' | 'range'

/**
 * Standards against their certified value, in the order in which they were run: which patterns are more than chance.
 *
 * 1_3s and R_4s point to a slip or a swapped bag, the others to an instrument that drifts.
 * @param wording of R_4s; 'pair' unless said
 * @returns z = (value - certified)/sd of each, and every place where a rule is met; beyond means strictly beyond
 * @throws InputError
 * Source: Westgard's rules as in PMC3909142, table 1 (read).
 */
export function controlChart(certified: number, sd: number, values: readonly number[], wording: RangeWording = 'pair'): { readonly z: readonly number[], readonly breaches: readonly Breach[] } {
  finite(certified, 'certified')
  positive(sd, 'sd')
  const z = checkedValues(values, 'values').map(value => (value - certified) / sd)
  const sameSide = (at: number, count: number, limit: number) => {
    if (at + 1 < count) return false
    const run = z.slice(at + 1 - count, at + 1)
    return run.every(v => v > limit) || run.every(v => v < -limit)
  }
  const wide = (at: number) => {
    if (at === 0) return false
    const [a, b] = [z[at - 1]!, z[at]!]
    return wording === 'range' ? Math.abs(a - b) > 4 : Math.max(a, b) > 2 && Math.min(a, b) < -2
  }
  const rules: readonly (readonly [ControlRule, (at: number) => boolean])[] = [
    ['1_3s', at => Math.abs(z[at]!) > 3], ['1_2s', at => Math.abs(z[at]!) > 2], ['2_2s', at => sameSide(at, 2, 2)],
    ['R_4s', wide], ['4_1s', at => sameSide(at, 4, 1)], ['10_x', at => sameSide(at, 10, 0)],
  ]
  const breaches = z.flatMap((_, at) => rules.filter(([, met]) => met(at)).map(([rule]) => ({ rule, at, warning: rule === '1_2s' })))
  return { z, breaches }
}

/** Places in a run of blanks that carry gold: above ten detection limits unless said (common practice, from memory). */
export function carriedBlanks(values: readonly number[], detectionLimit: number, times = 10): readonly number[] {
  positive(detectionLimit, 'detection_limit')
  positive(times, 'times')
  return checkedValues(values, 'values').flatMap((value, i) => value > times * detectionLimit ? [i] : [])
}
