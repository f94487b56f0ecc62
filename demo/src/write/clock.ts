/** The clock of the place is six hours behind UTC all through the season. */
export const offset = '-06:00'
const behind = 6 * 3_600_000

/** Milliseconds since 1970 of a time of day at the mine. */
export const timeOn = (day: string, hour: number, minute = 0): number => Date.parse(`${day}T00:00:00Z`) + behind + (hour * 60 + minute) * 60_000

/** `2026-05-04T09:30-06:00`. */
export const momentText = (ms: number): string => new Date(ms - behind).toISOString().slice(0, 16) + offset

/** `YYYY-MM-DD` at the mine. */
export const dayText = (ms: number): string => new Date(ms - behind).toISOString().slice(0, 10)

/** Working days from a first one on, Sundays left out. */
export function daysFrom(first: string, count: number): string[] {
  const days: string[] = []
  for (let ms = Date.parse(first); days.length < count; ms += 86_400_000) if (new Date(ms).getUTCDay() !== 0) days.push(new Date(ms).toISOString().slice(0, 10))
  return days
}
