import type { Field, Kind } from '../kinds/index.ts'
import { kinds } from '../kinds/index.ts'
import type { Book } from '../posting/entry.ts'
import type { Draft } from '../posting/posting.ts'
import type { Fields, FieldValue } from '../values.ts'
import { checkValue } from './check-value.ts'
import { doubts } from './doubts.ts'
import { bagKinds, namesIn } from './known.ts'
import type { Problem } from './problem.ts'
import { doubt, isError, refuse } from './problem.ts'
import { placesAtNought } from './places-at-nought.ts'
import { limitWords } from './quantity-limits.ts'
import type { Finding } from './rule.ts'
import { rules } from './rules.ts'
import { lateAlready } from './late-already.ts'
import { sameName } from './same-name.ts'
import { clockSlackMs, latestToday, momentMs } from './times.ts'

export interface Checking {
  /** The book it is to go into: needed for names that may be used once, for names that something else must explain, and for changes to an entry. */
  readonly book?: Book
  /** The entry that is changed; a new one when it is left out or not in the book. */
  readonly entry?: string
  /** Milliseconds since 1970, for dates in the future. */
  readonly now: number
}

type Writing = Readonly<Record<string, FieldValue | null | undefined>>

/** The description of a kind, or undefined: never something that every object has, such as `constructor`. */
export const kindOf = (id: string): Kind | undefined => Object.hasOwn(kinds, id) ? kinds[id] : undefined

/**
 * Checks what is to be written to one entry: that kind and fields exist, each value by its field, what is required, dates in the future,
 * names that may be used only once, what the fields of the entry must say together, and what is doubtful in the light of the book.
 * A change is checked as it would leave the entry.
 * @returns every problem, errors first; empty when nothing is to be said. Warnings do not stand in the way of writing.
 */
export function checkDraft(kindId: string, set: Writing, checking: Checking): readonly Problem[] {
  const kind = kindOf(kindId)
  if (kind === undefined) return [refuse('kind', 'Kind', kindId, `one of ${Object.keys(kinds).join(', ')}`)]
  const before = checking.entry === undefined ? undefined : checking.book?.all.get(checking.entry)
  if (before !== undefined && before.kind !== kindId) return [refuse('kind', 'Kind', kindId, `${before.kind}, which this entry is`)]
  const one = checkFields(kind, set, checking.now)
  const after: Fields = merged(before?.fields ?? {}, set)
  const whole = [...missing(kind, after), ...one.length > 0 ? [] : [...lateAlready(kind, set, after, checking.now), ...findings(kind, after, checking)]]
  const tagged = [...one, ...whole].map(problem => ({ kind: kindId, ...(checking.entry === undefined ? {} : { entry: checking.entry }), ...problem }))
  return [...tagged.filter(isError), ...tagged.filter(problem => !isError(problem))]
}

/**
 * Checks many drafts that are to be written together, so that none of them uses a name that another of them uses too.
 * @returns the list of problems of each, in order
 */
export function checkDrafts(drafts: readonly Draft[], checking: Omit<Checking, 'entry'>): readonly (readonly Problem[])[] {
  const taken = new Map<string, string>()
  return drafts.map(({ kind: kindId, entry, set }) => {
    const problems = checkDraft(kindId, set, { ...checking, entry })
    const twice = uniqueNames(kindId, set).filter(({ key }) => (taken.get(key) ?? entry) !== entry)
    for (const { key } of uniqueNames(kindId, set)) if (!taken.has(key)) taken.set(key, entry)
    const refused = twice.map(({ name, label, value }) =>
      ({ kind: kindId, entry, ...refuse(name, label, value, 'a name used once', 'because another entry written with this one has it too') }))
    return [...refused, ...problems]
  })
}

/** The fields whose text may stand in one entry only, with a key that is the same wherever the same name may not be used again. */
function uniqueNames(kindId: string, set: Writing): readonly { readonly name: string, readonly label: string, readonly value: string, readonly key: string }[] {
  return Object.entries(kindOf(kindId)?.fields ?? {}).flatMap(([name, { is, label }]) => {
    const value = set[name]
    if (is.type !== 'text' || is.unique !== true || typeof value !== 'string') return []
    return [{ name, label, value, key: `${sharing(kindId).join()} ${name}: ${sameName(value)}` }]
  })
}

/** The kinds that share one run of names with this one. */
const sharing = (kindId: string): readonly string[] => (bagKinds as readonly string[]).includes(kindId) ? bagKinds : [kindId]

/** Each field on its own, without a book: what a posting must satisfy by itself. Without `now` dates in the future pass. */
export function checkFields(kind: Kind, set: Writing, now?: number): readonly Problem[] {
  return Object.entries(set).flatMap(([name, value]) => {
    const field = Object.hasOwn(kind.fields, name) ? kind.fields[name] : undefined
    if (field === undefined) return [refuse(name, kind.label, name, `a field of ${kind.label.toLowerCase()}: ${Object.keys(kind.fields).join(', ')}`)]
    if (value === null || value === undefined) return []
    const problem = checkValue(field, value, name) ?? (now === undefined ? undefined : inTheFuture(field.label, name, field.is, value, now))
    return problem === undefined ? [] : [problem]
  })
}

function inTheFuture(label: string, name: string, is: Field['is'], value: FieldValue, now: number): Problem | undefined {
  const ahead = is.type === 'date' ? is.future !== true && (value as string) > latestToday(now)
    : is.type === 'moment' ? is.future !== true && momentMs(value as string)! > now + clockSlackMs
      : is.type === 'year' && (value as number) > Number(latestToday(now).slice(0, 4))
  return ahead ? refuse(name, label, value, 'a time that is not in the future', `because it is after ${new Date(now).toISOString().slice(0, 10)}`) : undefined
}

const missing = (kind: Kind, after: Fields): readonly Problem[] => Object.entries(kind.fields).flatMap(([name, field]) =>
  field.required === true && after[name] === undefined && after[field.unless ?? name] === undefined
    ? [refuse(name, field.label, undefined, field.hint ?? needed(field.is))] : [])

/** What a field that must be written takes, in a few words. */
function needed(is: Field['is']): string {
  switch (is.type) {
    case 'quantity': return limitWords(is)
    case 'choice': return `one of ${is.of.join(', ')}`
    case 'text': case 'note': return 'a line of text'
    case 'words': return 'one word or more'
    default: return `a ${is.type}`
  }
}

function findings(kind: Kind, after: Fields, { book, entry }: Checking): readonly Problem[] {
  const found: readonly Finding[] = [
    ...(rules[kind.id] ?? []).flatMap(rule => rule(after) ?? []), ...placesAtNought(kind, after),
    ...book === undefined ? [] : [...usedTwice(kind, after, book, entry), ...doubts(kind.id, after, book, entry)],
  ]
  return found.map(({ field, expected, sentence, doubt: doubtful }) => {
    const name = /^\w+/.exec(field)?.[0] ?? ''
    const label = kind.fields[name]?.label ?? kind.label
    return doubtful ? doubt(field, label, after[name], expected, `${sentence}.`) : { field, value: after[name], expected, message: `${label}: ${sentence}.` }
  })
}

function usedTwice(kind: Kind, after: Fields, book: Book, entry: string | undefined): readonly Finding[] {
  return uniqueNames(kind.id, after).flatMap(({ name, value }) => {
    const others = sharing(kind.id).flatMap(id => namesIn(book, id, name).get(sameName(value)) ?? []).filter(id => id !== entry)
    return others.length === 0 ? [] : [{ field: name, expected: 'a name used once', sentence: `${value} is used by another entry already (${others.join(', ')})` }]
  })
}

function merged(before: Fields, set: Writing): Fields {
  const after: Record<string, FieldValue> = { ...before }
  for (const [name, value] of Object.entries(set)) {
    if (value === null) delete after[name]
    else if (value !== undefined) after[name] = value
  }
  return after
}
