import { InputError } from '@lodebook/reckon'
import type { Posting } from './posting.ts'

/**
 * A hybrid logical clock: the time of day where clocks agree, and always later than everything that its writer had seen.
 * Written as `<milliseconds since 1970, 13 digits>-<counter, 4 digits>`, so that text order is time order.
 * Source: S. Kulkarni, M. Demirbas, D. Madappa, B. Avva, M. Leone, 'Logical physical clocks', OPODIS 2014.
 */
export type Clock = string

export const firstClock: Clock = '0000000000000-0000'

/** The last millisecond that a clock may show, so that a clock gone wild cannot use up the digits: 2200-01-01. */
export const lastClockMs = Date.UTC(2200, 0, 1)

export const isClock = (text: string): boolean => /^\d{13}-\d{4}$/.test(text) && clockMs(text) <= lastClockMs

/** Milliseconds since 1970. */
export const clockMs = (clock: Clock): number => Number(clock.slice(0, 13))

/** ISO 8601 in UTC. */
export const clockTime = (clock: Clock): string => new Date(clockMs(clock)).toISOString()

/** [P3] The clock of the next writing: now, or just after `clock` when that is not yet past. */
export function tick(clock: Clock, nowMs: number): Clock {
  if (!(Number.isInteger(nowMs) && nowMs >= 0 && nowMs <= lastClockMs)) throw new InputError('nowMs', nowMs, 'whole milliseconds since 1970, before the year 2200')
  const last = clockMs(clock)
  if (nowMs > last) return show(nowMs, 0)
  const counter = Number(clock.slice(14)) + 1
  return counter > 9999 ? show(last + 1, 0) : show(last, counter)
}

/** [P3] The clock of a device after it has seen another's posting: the later of the two. */
export const receive = (clock: Clock, seen: Clock): Clock => seen > clock ? seen : clock

const show = (ms: number, counter: number): Clock => `${String(ms).padStart(13, '0')}-${String(counter).padStart(4, '0')}`

/** A device whose clock runs ahead wins over later writing of others, so it is worth a word; this much is nothing. */
export const aheadSlackMs = 10 * 60_000

export interface Ahead { readonly device: string, readonly seq: number, readonly by: string, readonly aheadMs: number, readonly message: string }

/** [P4] The first posting of each device that was written later than now, by more than clocks usually differ. */
export function clocksAhead(postings: readonly Posting[], nowMs: number, slackMs = aheadSlackMs): readonly Ahead[] {
  const first = new Map<string, Posting>()
  for (const posting of postings) {
    if (clockMs(posting.clock) <= nowMs + slackMs) continue
    const known = first.get(posting.device)
    if (known === undefined || posting.seq < known.seq) first.set(posting.device, posting)
  }
  return [...first.values()].map(({ device, seq, by, clock }) => {
    const aheadMs = clockMs(clock) - nowMs
    return { device, seq, by, aheadMs, message: `Device ${device} (${by}): its clock is ${duration(aheadMs)} ahead since its posting ${seq}; set it right.` }
  })
}

const duration = (ms: number): string => {
  const minutes = Math.round(ms / 60_000)
  return minutes < 120 ? `${minutes} minutes` : minutes < 48 * 60 ? `${Math.round(minutes / 60)} hours` : `${Math.round(minutes / 1440)} days`
}
