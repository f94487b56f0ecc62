import type { Entry } from '@lodebook/book'
import { goingsOf } from './goings.ts'
import type { GoingInAt } from './shapes.ts'

/** How it stands with people who are in: none of these is leave for anything. */
export type CallOutState = 'in' | 'due soon' | 'overdue' | 'call for help'

export interface CallOut extends GoingInAt {
  readonly state: CallOutState
  /** Minutes past the time due; negative before it. */
  readonly overdueBy: number
  /** When help is to be called for, milliseconds since 1970. */
  readonly callAt: number
}

/** A reminder before the time due, minutes. Common practice, no source. */
export const reminder = 15

/**
 * Everybody who is written as in and not as out, the most overdue first, at one moment of one clock.
 * It hangs only on what is written and on the moment, so a clock that was off knows the same the moment it is on again.
 */
export function callOutAt(entries: readonly Entry[], nowMs: number): readonly CallOut[] {
  return goingsOf(entries).filter(going => going.out === undefined).map((going): CallOut => {
    const due = Date.parse(going.due), callAt = due + going.callAfter * 3_600_000, overdueBy = (nowMs - due) / 60_000
    const state = nowMs >= callAt ? 'call for help' : nowMs >= due ? 'overdue' : overdueBy >= -reminder ? 'due soon' : 'in'
    return { ...going, state, overdueBy, callAt }
  }).sort((a, b) => b.overdueBy - a.overdueBy)
}
