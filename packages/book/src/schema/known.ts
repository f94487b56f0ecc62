import type { Book, Entry } from '../posting/entry.ts'
import { memo } from './memo.ts'
import { sameName } from './same-name.ts'

const stationsOf = (entries: readonly Entry[], ...fields: readonly string[]): readonly string[] =>
  entries.flatMap(entry => fields.map(field => entry.fields[field])).filter(name => typeof name === 'string')

const ends = memo((shots = []) => new Set(stationsOf(shots, 'from', 'to')))
const ties = memo((tied = []) => new Set(stationsOf(tied, 'station')))

const renamed = memo((renames = []) => renames.map(({ fields }) => [fields['was'], fields['now']] as const))

/** Whether a shot reaches the station or a tie places it. Station names are compared as written: a6 is not A6. */
export const isMeasured = (book: Book, station: string): boolean => namesOf(book, station).some(name =>
  ends(book.of('shot')).has(name) || ties(book.of('tie')).has(name) || ends(book.of('paced')).has(name))

/** A station's name with all others that renamings join to it. */
function namesOf(book: Book, station: string): readonly string[] {
  const names = new Set([station]), pairs = renamed(book.of('rename'))
  for (let before = 0; before < names.size;) {
    before = names.size
    for (const [was, now] of pairs) {
      if (typeof was !== 'string' || typeof now !== 'string') continue
      if (names.has(was)) names.add(now)
      else if (names.has(now)) names.add(was)
    }
  }
  return [...names]
}

/** Stations of shots that no chain of shots joins to a tie: they have shape but no place on the ground. In order of first use. */
export const untied = (book: Book): ReadonlySet<string> => findUntied(book.of('shot'), book.of('tie'))

const findUntied = memo((shots = [], tied = []) => {
  const joined = new Map<string, string[]>()
  const link = (a: string, b: string) => { joined.set(a, [...joined.get(a) ?? [], b]) }
  for (const { fields: { from, to } } of shots) {
    if (typeof from === 'string' && typeof to === 'string') { link(from, to); link(to, from) }
  }
  const reached = new Set(ties(tied))
  const waiting = [...reached]
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    for (const next of joined.get(name) ?? []) if (!reached.has(next)) { reached.add(next); waiting.push(next) }
  }
  return new Set([...joined.keys()].filter(name => !reached.has(name)))
})

const indexes = new Map<string, (entries: readonly Entry[]) => ReadonlyMap<string, readonly string[]>>()

/** Ids of the unstruck entries of a kind, by the name that stands in one of its fields (see sameName). */
export function namesIn(book: Book, kind: string, field: string): ReadonlyMap<string, readonly string[]> {
  const index = indexes.get(field) ?? memo((entries = []) => idsByName(entries, field))
  indexes.set(field, index)
  return index(book.of(kind))
}

function idsByName(entries: readonly Entry[], field: string): ReadonlyMap<string, readonly string[]> {
  const ids = new Map<string, string[]>()
  for (const { id, fields } of entries) {
    const value = fields[field]
    if (typeof value !== 'string') continue
    const there = ids.get(sameName(value))
    if (there) there.push(id)
    else ids.set(sameName(value), [id])
  }
  return ids
}

/** The kinds whose bags share one run of numbers: a bag number means one bag. */
export const bagKinds = ['sample', 'split'] as const

/** Whether some bag of that number has been written. */
export const isBag = (book: Book, bag: string): boolean => bagKinds.some(kind => namesIn(book, kind, 'bag').has(sameName(bag)))
