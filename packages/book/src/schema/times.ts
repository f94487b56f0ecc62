/** Dates and moments as they are stored. */

const days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
const leap = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)

/** Whether there is such a day in the (proleptic Gregorian) calendar. */
export const isDay = (year: number, month: number, day: number): boolean =>
  month >= 1 && month <= 12 && day >= 1 && day <= days[month - 1]! + (month === 2 && leap(year) ? 1 : 0)

/** Whether the text is a date `YYYY-MM-DD` that exists. */
export function isDate(text: string): boolean {
  const m = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text)
  return m !== null && isDay(Number(m[1]), Number(m[2]), Number(m[3]))
}

/** Milliseconds since 1970 of an ISO 8601 moment with its offset, `2026-05-03T07:30-07:00`; undefined when it is none. */
export function momentMs(text: string): number | undefined {
  const m = /^(\d{4}-\d\d-\d\d)T(\d\d):(\d\d)(?::(\d\d)(?:\.\d{1,3})?)?(?:Z|[+-](\d\d):(\d\d))$/.exec(text)
  if (m === null || !isDate(m[1]!) || Number(m[2]) > 23 || Number(m[3]) > 59 || Number(m[4] ?? 0) > 59) return undefined
  if (Number(m[5] ?? 0) > 14 || Number(m[6] ?? 0) > 59) return undefined
  return Date.parse(text)
}

/** The last date that has begun anywhere on earth at this moment: clocks run up to 14 hours ahead of UTC. */
export const latestToday = (nowMs: number): string => new Date(nowMs + 14 * 3_600_000).toISOString().slice(0, 10)

/** A clock set a little wrong is not a future date. */
export const clockSlackMs = 10 * 60_000
