/**
 * The name that follows in a run: B-017 -> B-018, 99 -> 100, A9 -> A10, kept to the same number of figures; '' when the last one holds no number
 * or the next is taken already.
 */
export function nextName(last: string, taken: ReadonlySet<string>): string {
  const m = /^(.*?)(\d+)(\D*)$/.exec(last)
  if (!m) return ''
  const next = `${m[1]!}${String(Number(m[2]!) + 1).padStart(m[2]!.length, '0')}${m[3]!}`
  return taken.has(next) ? '' : next
}
