import type { LimitKind } from './gas-limits.ts'

/** How soon a limit must be acted on: 0 at once, 3 within the shift. Within one step the value furthest past its limit comes first. */
export const urgency: Readonly<Record<LimitKind, number>> = {
  'immediate danger': 0, explosive: 0, effect: 0, withdraw: 1, minimum: 1, ceiling: 1, act: 2, 'short-term': 2, maximum: 2, 'shift average': 3,
}

const outNow = 'Everyone out now, into open air. Nobody goes back, not even to fetch someone, without breathing apparatus and the training for it. Call for mine rescue.'

/** What to do about a value outside a limit of that kind. Common practice, no source, but for methane, where the rule says it. */
export const gasActions: Readonly<Record<LimitKind, string>> = {
  'immediate danger': outNow,
  effect: outNow,
  explosive: 'Everyone out now. No flame, no spark: switch nothing on or off, strike no steel. Keep the entrance clear and call for mine rescue.',
  withdraw: 'Everyone out but those who mend the air. Power off, no flame.',
  minimum: 'Leave for open air. Nobody goes in until air has been moved and a new reading taken from the open side is at or above the limit.',
  ceiling: 'Leave for open air. Nobody goes in until air has been moved and a new reading is under the limit.',
  act: 'Change the ventilation and cut the power to the place. No other work until it reads under 0.5 %. No flame.',
  'short-term': 'Leave for open air; a few minutes of it are the most that is allowed. Move air, find where it comes from, read again.',
  maximum: 'Keep flame and sparks away and find where the oxygen comes from. Check the meter in open air.',
  'shift average': 'Held for a shift this is too much; one reading can\'t say how long it lasts. Find where it comes from, move air, and go on reading.',
}
