import { isDate, isDay, momentMs } from '../schema/times.ts'
import type { Read } from './read.ts'
import { says, wants } from './read.ts'

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']
const fullMonths = ['january', 'february', 'march', 'april', 'may', 'june', 'july', 'august', 'september', 'october', 'november', 'december']
const dateExample = 'a date such as 2026-05-03 or 3 May 2026'

/** Reads a date that can be read in one way only: `2026-05-03`, `3 May 2026`, `May 3, 2026`, `3.5.2026`, `13/5/2026`. Returns `YYYY-MM-DD`. */
export function readDate(text: string): Read<string> {
  const written = text.trim().replace(/\s+/g, ' ')
  if (isDate(written)) return says(written)
  const ymd = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(written)
  if (ymd) return day(Number(ymd[1]), Number(ymd[2]), Number(ymd[3]))
  const dMonY = /^(\d{1,2})(?:st|nd|rd|th)?[ -]([A-Za-z]+)\.?,?[ -](\d{4})$/.exec(written)
  if (dMonY) return day(Number(dMonY[3]), monthNamed(dMonY[2]!), Number(dMonY[1]))
  const monDY = /^([A-Za-z]+)\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4})$/.exec(written)
  if (monDY) return day(Number(monDY[3]), monthNamed(monDY[1]!), Number(monDY[2]))
  const dots = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(written)
  if (dots) return day(Number(dots[3]), Number(dots[2]), Number(dots[1]))
  const slashes = /^(\d{1,2})[/-](\d{1,2})[/-](\d{4})$/.exec(written)
  if (slashes) return eitherWay(Number(slashes[3]), Number(slashes[1]), Number(slashes[2]))
  return wants(dateExample, /\b\d{1,2}$/.test(written) && !/\d{4}/.test(written) ? 'because the year is not written in full' : undefined)
}

function eitherWay(year: number, a: number, b: number): Read<string> {
  if (a === b || a > 12) return day(year, b, a)
  if (b > 12) return day(year, a, b)
  return wants(dateExample, `because it can be the ${a}. of ${months[b - 1]!} or the ${b}. of ${months[a - 1]!}`)
}

function monthNamed(name: string): number {
  const word = name.toLowerCase()
  return 1 + (word === 'sept' ? 8 : Math.max(months.indexOf(word), fullMonths.indexOf(word)))
}

const day = (year: number, month: number, date: number): Read<string> => isDay(year, month, date)
  ? says(`${year}-${String(month).padStart(2, '0')}-${String(date).padStart(2, '0')}`)
  : wants(dateExample, 'because there is no such day')

/**
 * Reads a moment: an ISO 8601 one with its offset as it is; a date and a time of day, `3 May 2026 7:30 am`, with the offset of the place.
 * @param offset  `Z`, `-07:00`; taken when none is written
 */
export function readMoment(text: string, offset?: string): Read<string> {
  const written = text.trim().replace(/\s+/g, ' ')
  const example = 'a date and time such as 2026-05-03T07:30-07:00 or 3 May 2026 07:30'
  if (momentMs(written) !== undefined) return says(written)
  const m = /^(.*?\d{4}.*?|.*\d)[T ,]+(\d{1,2})(?::(\d\d))?(?::(\d\d))? ?(am|pm)? ?(Z|[+-]\d\d:\d\d)?$/i.exec(written)
  if (m === null || (m[3] === undefined && m[5] === undefined)) return wants(example)
  const date = readDate(m[1]!)
  if (!date.ok) return date
  const hour = clockHour(Number(m[2]), m[5]?.toLowerCase())
  const zone = m[6]?.toUpperCase() ?? offset
  if (zone === undefined) return wants(example, 'because the offset from UTC is not said')
  const moment = `${date.value}T${String(hour).padStart(2, '0')}:${m[3] ?? '00'}:${m[4] ?? '00'}${zone}`
  return hour >= 0 && momentMs(moment) !== undefined ? says(moment) : wants(example, 'because there is no such time of day')
}

/** -1 when there is no such hour on that half of the dial. */
const clockHour = (hour: number, half: string | undefined): number =>
  half === undefined ? hour : hour < 1 || hour > 12 ? -1 : hour % 12 + (half === 'pm' ? 12 : 0)
