import { colourClasses } from '@lodebook/book/input'
import { entryTitle } from '@lodebook/answers'
import { conflicts, kinds } from '@lodebook/book'
import type { Book, Entry, FieldValue } from '@lodebook/book'
import { fieldText } from '../words/field-text.ts'
import type { BookState, ConflictLine, EntryLine, FormHelp, SurveyedBy } from './desk.ts'

export const lineOf = (entry: Entry): EntryLine => ({ entry, title: entryTitle(entry) })

const text = (value: unknown): string => typeof value === 'string' ? value : ''

/** The part of a BookState that the book itself gives. */
export function stateOf(book: Book): Pick<BookState, 'name' | 'district' | 'datum' | 'currency' | 'units' | 'people' | 'colourMg' | 'postings' | 'counts' | 'conflicts'> {
  const mine = book.of('mine')[0]?.fields ?? {}, counts: Record<string, { standing: number, struck: number }> = {}
  for (const entry of book.all.values()) {
    const count = counts[entry.kind] ??= { standing: 0, struck: 0 }
    if (entry.struck) count.struck++; else count.standing++
  }
  const named = Array.isArray(mine['people']) ? mine['people'] as readonly string[] : []
  const writers = new Set([...book.all.values()].map(e => e.createdBy))
  return {
    name: text(mine['name']), district: text(mine['district']), datum: text(mine['datum']), currency: text(mine['currency']),
    units: mine['units'] === 'feet and oz/ton' ? 'feet and oz/ton' : 'metres and g/t',
    people: [...named, ...[...writers].filter(w => !named.includes(w))], postings: book.postings, counts,
    colourMg: colourClasses(book), conflicts: conflicts(book).length,
  }
}

/** Latest first, each once. */
const latest = (words: readonly string[], most: number): readonly string[] => [...new Set([...words].reverse())].slice(0, most)

const wordsIn = (value: unknown): readonly string[] => typeof value === 'string' ? [value] : Array.isArray(value) ? value.filter(v => typeof v === 'string') : []

/** Samples put in to check the others say nothing of how the next one is taken. */
const checks = new Set<unknown>(['blank', 'standard', 'duplicate'])

/** What was written in the fields of a kind before, the stations there are, and what was last written in each field. */
export function helpFor(book: Book, kindId: string, mine: (entry: Entry) => boolean): Omit<FormHelp, 'draft'> {
  const entries = book.of(kindId), used: Record<string, readonly string[]> = {}
  for (const [name, { is }] of Object.entries(kinds[kindId]?.fields ?? {})) {
    if (is.type !== 'text' && is.type !== 'words') continue
    const others = name === 'bag' || name === 'vein' || name === 'heading' ? namesElsewhere(book, name) : []
    used[name] = latest([...others, ...entries.flatMap(e => wordsIn(e.fields[name]))], 40)
  }
  const before: Record<string, FieldValue> = {}
  const usual = entries.filter(e => !checks.has(e.fields['role']))
  for (const entry of [...usual.filter(e => !mine(e)), ...usual.filter(mine)]) Object.assign(before, entry.fields)
  return { used, stations: latest(book.of('shot').flatMap(e => [...wordsIn(e.fields['from']), ...wordsIn(e.fields['to'])]), 400), before }
}

/** Bags, veins and headings are named in one place and spoken of in others. */
function namesElsewhere(book: Book, name: string): readonly string[] {
  if (name === 'bag') return [...book.of('sample'), ...book.of('split')].flatMap(e => wordsIn(e.fields['bag']))
  if (name === 'heading') return book.of('heading').flatMap(e => wordsIn(e.fields['name']))
  return [...book.of('structure').filter(e => e.fields['feature'] === 'vein').flatMap(e => wordsIn(e.fields['name'])), ...book.of('width').flatMap(e => wordsIn(e.fields['vein']))]
}

/** Conflicts that nobody has settled, in words. */
export const conflictLines = (book: Book): readonly ConflictLine[] => conflicts(book).map(({ entry, kind, field, sayings }) => {
  const described = kinds[kind]?.fields[field]
  return {
    entry, field, title: entryTitle(book.all.get(entry)!), label: described?.label ?? field,
    sayings: sayings.map(({ by, clock, value }) => ({ by, clock, text: value === null ? 'nothing' : fieldText(value, described) })),
  }
})

/** Who shot the survey, and over which days. */
export function surveyors(book: Book): SurveyedBy {
  const shots = book.of('shot'), days = shots.map(s => text(s.fields['taken'])).filter(d => d !== '').sort()
  return { surveyors: latest(shots.flatMap(s => wordsIn(s.fields['surveyors'])), 6), from: days[0] ?? '', to: days.at(-1) ?? '' }
}
