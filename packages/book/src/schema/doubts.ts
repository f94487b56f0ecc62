import type { Place } from '../place.ts'
import type { Book } from '../posting/entry.ts'
import type { Fields } from '../values.ts'
import { isBag, isMeasured, namesIn, untied } from './known.ts'
import type { Finding } from './rule.ts'
import { sameName } from './same-name.ts'

/** What is doubtful about a station that something is measured from. */
function stationDoubts(book: Book, field: string, station: string): readonly Finding[] {
  if (!isMeasured(book, station)) {
    return [{ field, expected: 'a station of a shot or a tie', sentence: `nobody has measured station ${station} yet, so this has no place until somebody does`, doubt: true }]
  }
  return untied(book).has(station)
    ? [{ field, expected: 'a station joined to a tie', sentence: `station ${station} is not joined to a tie yet, so its place on the ground is not known`, doubt: true }] : []
}

function placeDoubts(book: Book, field: string, place: Place): readonly Finding[] {
  const named: readonly (readonly [string, string | undefined])[] = place.by === 'station' ? [['station', place.station], ['toward', place.toward]]
    : place.by === 'tapes' ? [['first.station', place.first.station], ['second.station', place.second.station]] : []
  return named.flatMap(([part, station]) => station === undefined ? [] : stationDoubts(book, `${field}.${part}`, station))
}

const isPlace = (value: unknown): value is Place => typeof value === 'object' && value !== null && 'by' in value

/** Which fields name a bag that should be in the book. */
const bagFields: Readonly<Record<string, readonly string[]>> = { pan: ['bag'], assay: ['bag'], split: ['of'], density: ['bag'], target: ['bag'], 'target-check': ['bag'], sample: ['duplicateOf'] }

/** What is possible but doubtful in the light of the book: names that nothing else explains yet. */
export function doubts(kind: string, fields: Fields, book: Book, entry?: string): readonly Finding[] {
  const found: Finding[] = []
  for (const [name, value] of Object.entries(fields)) {
    if (isPlace(value)) found.push(...placeDoubts(book, name, value))
    else if (Array.isArray(value)) value.forEach((item: unknown, i) => { if (isPlace(item)) found.push(...placeDoubts(book, `${name}[${i}]`, item)) })
  }
  for (const name of bagFields[kind] ?? []) {
    const bag = fields[name]
    if (typeof bag === 'string' && !isBag(book, bag)) {
      found.push({ field: name, expected: 'a bag in the book', sentence: `no sample or split with bag ${bag} is written yet`, doubt: true })
    }
  }
  return [...found, ...(special[kind]?.(fields, book, entry) ?? [])]
}

const special: Readonly<Record<string, (fields: Fields, book: Book, entry?: string) => readonly Finding[]>> = {
  mine: (_, book, entry) => book.of('mine').some(({ id }) => id !== entry)
    ? [{ field: 'name', expected: 'one mine in a book', sentence: 'this book already has its mine; change that entry instead', doubt: true }] : [],
  shot: ({ from, to }, book) => typeof from === 'string' && typeof to === 'string' && book.of('shot').length + book.of('tie').length > 0
    && !isMeasured(book, from) && !isMeasured(book, to)
    ? [{ field: 'from', expected: 'a station of the survey', sentence: `neither ${from} nor ${to} is joined to the survey yet`, doubt: true }] : [],
  tie: ({ station }, book) => typeof station === 'string' && book.of('shot').length > 0 && !isMeasured(book, station)
    ? [{ field: 'station', expected: 'a station of a shot', sentence: `no shot reaches station ${station} yet`, doubt: true }] : [],
  rename: ({ was, now }, book, entry) => [
    ...typeof was === 'string' && !isMeasured(book, was) ? stationDoubts(book, 'was', was) : [],
    ...book.of('rename').some(({ id, fields }) => id !== entry && fields['was'] === was)
      ? [{ field: 'was', expected: 'a station renamed once', sentence: `station ${typeof was === 'string' ? was : ''} has been renamed before; the last renaming stands for all of it`, doubt: true as const }] : [],
    ...typeof now === 'string' && typeof was === 'string' && isMeasured(book, now) && !book.of('rename').some(({ fields }) => fields['now'] === now || fields['was'] === now)
      ? [{ field: 'now', expected: 'a name that no other station has', sentence: `station ${now} is in the survey already: this says that ${was} and ${now} are one and the same mark`, doubt: true as const }] : [],
  ],
  heading: ({ stations }, book) => Array.isArray(stations)
    ? stations.flatMap((name: unknown, i) => typeof name === 'string' ? stationDoubts(book, `stations[${i}]`, name) : []) : [],
  sample: ({ standard }, book) => typeof standard === 'string' && !namesIn(book, 'standard', 'name').has(sameName(standard))
    ? [{ field: 'standard', expected: 'a blank or standard in the book', sentence: `no blank or standard named ${standard} is written yet`, doubt: true }] : [],
  'target-check': ({ mark }, book) => typeof mark === 'string' && !namesIn(book, 'target', 'mark').has(sameName(mark))
    ? [{ field: 'mark', expected: 'the mark of a target in the book', sentence: `no target with mark ${mark} is written yet`, doubt: true }] : [],
  photo: ({ of }, book) => typeof of === 'string' && !book.all.has(of)
    ? [{ field: 'of', expected: 'an entry of the book', sentence: 'the entry it shows is not in the book yet', doubt: true }] : [],
}
