/** How long until they are due, or how late they are: 'in 2 h 10 min', '35 min late'. */
export function lateText(overdueBy: number): string {
  const minutes = Math.floor(Math.abs(overdueBy)), hours = Math.floor(minutes / 60), rest = minutes % 60
  const span = hours === 0 ? `${minutes} min` : `${hours} h${rest === 0 ? '' : ` ${rest} min`}`
  return overdueBy < 0 ? `in ${span}` : `${span} late`
}
