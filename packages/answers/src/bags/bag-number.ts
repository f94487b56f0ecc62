/** A label's number in parts: B-017 is B-, 17, three figures. */
export interface BagNumber { readonly prefix: string, readonly number: number, readonly digits: number }

/** Undefined for what is no plain label: no number, or letters after it, as a split's B-017A. */
export function bagNumber(bag: string): BagNumber | undefined {
  const m = /^(.*?)(\d{1,9})$/.exec(bag.trim())
  return m ? { prefix: m[1]!, number: Number(m[2]), digits: m[2]!.length } : undefined
}

export const labelText = (prefix: string, number: number, digits: number): string => `${prefix}${String(number).padStart(digits, '0')}`

/** Bags are compared as a person reads them. */
export const bagKey = (bag: string): string => bag.trim().replace(/\s+/g, ' ').toLowerCase()

/** A run this long at most is taken for a list of bags. */
const longest = 1000

/** Bags as named in a list; a run such as 'B-001 to B-020' stands for each of them. */
export function bagsNamed(words: readonly string[]): readonly string[] {
  return words.flatMap((word) => {
    const m = /^(\S+?)\s*(?:to|–|\.\.+|…)\s*(\S+)$/.exec(word.trim())
    const [a, b] = [m && bagNumber(m[1]!), m && bagNumber(m[2]!)]
    if (!a || !b || (b.prefix !== '' && bagKey(a.prefix) !== bagKey(b.prefix)) || b.number < a.number || b.number - a.number >= longest) return [word.trim()]
    return Array.from({ length: b.number - a.number + 1 }, (_, i) => labelText(a.prefix, a.number + i, a.digits))
  })
}

const runsShown = 6

/** Bags as one would read them out: in runs, in order, the first few of many. */
export function bagWords(bags: readonly string[]): string {
  const runs = runsOf([...bags].sort((a, b) => a.localeCompare(b, 'en', { numeric: true })))
  return runs.length <= runsShown ? runs.join(', ') : `${runs.slice(0, runsShown).join(', ')} and more`
}

/** Numbers put together in runs: 'B-004', 'B-010 to B-013'. */
export function runsOf(bags: readonly string[]): readonly string[] {
  const runs: string[][] = []
  for (const bag of bags) {
    const last = runs.at(-1), [before, now] = [last && bagNumber(last.at(-1)!), bagNumber(bag)]
    if (last && before && now && before.prefix === now.prefix && now.number === before.number + 1) last.push(bag)
    else runs.push([bag])
  }
  return runs.map(run => run.length === 1 ? run[0]! : `${run[0]!} to ${run.at(-1)!}`)
}
