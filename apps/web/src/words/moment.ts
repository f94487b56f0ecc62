const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' })
const clock = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' })

/** '25 Nov 2026', in the device's own time zone; the text as it stands if it is no date. */
export const dayText = (iso: string): string => {
  const at = new Date(iso.length === 10 ? `${iso}T12:00` : iso)
  return Number.isNaN(at.getTime()) ? iso : day.format(at)
}
export const clockText = (iso: string): string => clock.format(new Date(iso))
export const momentText = (iso: string): string => `${dayText(iso)}, ${clockText(iso)}`

/** The calendar day in the device's own time zone, YYYY-MM-DD. */
export const localDay = (at: Date): string =>
  `${at.getFullYear()}-${String(at.getMonth() + 1).padStart(2, '0')}-${String(at.getDate()).padStart(2, '0')}`
/** A moment with its offset, to the minute: 2026-11-25T14:32+01:00. */
export function localMoment(at: Date): string {
  const offset = -at.getTimezoneOffset(), sign = offset < 0 ? '-' : '+', two = (n: number) => String(Math.floor(n)).padStart(2, '0')
  return `${localDay(at)}T${two(at.getHours())}:${two(at.getMinutes())}${sign}${two(Math.abs(offset) / 60)}:${two(Math.abs(offset) % 60)}`
}
