import { urgency } from './gas-action.ts'
import type { GasLimit } from './gas-limits.ts'

type Held = Pick<GasLimit, 'kind' | 'limit' | 'outside'> & { readonly value: number }

/** Whether a value is outside a limit: below it, above it, or at it and above. */
export const isOutside = (value: number, { limit, outside }: Pick<GasLimit, 'limit' | 'outside'>): boolean =>
  outside === 'below' ? value < limit : outside === 'above' ? value > limit : value >= limit

/** How many times past its limit; no oxygen at all counts as a million times. */
const past = ({ value, limit, outside }: Held): number => outside === 'below' ? limit / Math.max(value, limit / 1e6) : value / limit

const graver = (a: Held, b: Held): boolean => a.outside === 'below' ? a.limit < b.limit : a.limit > b.limit

/** What is outside, most urgent first and within one step the value furthest past its limit; of the effects of one substance only the gravest. */
export function worstFirst<T extends Held>(outside: readonly T[], of: (held: T) => string): readonly T[] {
  return outside
    .filter(held => held.kind !== 'effect' || !outside.some(other => other.kind === 'effect' && of(other) === of(held) && graver(other, held)))
    .sort((a, b) => urgency[a.kind] - urgency[b.kind] || past(b) - past(a))
}
