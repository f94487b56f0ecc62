/** A moment in this machine's own time, to the minute: 2026-05-03 07:12. */
export function when(iso: string): string {
  const time = new Date(iso)
  const two = (number: number) => String(number).padStart(2, '0')
  return `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())} ${two(time.getHours())}:${two(time.getMinutes())}`
}
