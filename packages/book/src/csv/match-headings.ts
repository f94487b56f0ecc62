import { show } from '@lodebook/reckon'
import type { Field, Kind } from '../kinds/index.ts'
import type { Problem } from '../schema/problem.ts'
import { joins } from './field-named.ts'
import { headingReadings, isUnit, loosely } from './heading-text.ts'
import type { Heading } from './table.ts'

/** A field that a column feeds without being told to. */
export interface Match {
  readonly kind: string
  readonly field: string
  readonly heading: Heading
  /** The unit that the heading carries; undefined where it carries none. */
  readonly unit?: string
}

export interface Taken { readonly fields: ReadonlySet<string>, readonly columns: ReadonlySet<number> }

/**
 * Which field each column feeds, told from its heading alone. A heading that names no field is left alone; nothing is guessed from the cells.
 *
 * A column goes to one field only, of the first kind that knows its heading; a name that joins the kinds, such as the bag, goes to each.
 * @param kinds  what one row makes, in order
 * @param taken  `kind.field` of fields that the crew has mapped itself, and columns that it has used: they are left out
 */
export function matchHeadings(kinds: readonly Kind[], headings: readonly Heading[], taken: Taken):
{ readonly matches: readonly Match[], readonly problems: readonly Problem[] } {
  const matches: Match[] = []
  const problems: Problem[] = []
  const spoken = new Set<number>(taken.columns)
  for (const kind of kinds) {
    const free = candidates(kind, headings, taken.fields).filter(({ field, heading }) => !spoken.has(heading.column) || joins(kinds, field))
    const given = new Set<number>()
    for (const field of inOrder(kind, free)) {
      const [first, second] = free.filter(one => one.field === field && !given.has(one.heading.column)).sort((a, b) => b.score - a.score)
      if (!first) continue
      if (second && second.score === first.score) {
        problems.push(twoColumns(kind, field, first.heading, second.heading))
        continue
      }
      given.add(first.heading.column)
      matches.push({ kind: kind.id, field, heading: first.heading, ...(first.unit === undefined ? {} : { unit: first.unit }) })
    }
    for (const column of given) spoken.add(column)
  }
  return { matches, problems }
}

interface Scored extends Omit<Match, 'kind'> { readonly score: number }

const own = 3
const alias = 2
/** Another heading for a field, but another field's own name: `Tape` for a distance. */
const borrowed = 1

/** Every field of a kind that some heading names. */
function candidates(kind: Kind, headings: readonly Heading[], taken: ReadonlySet<string>): readonly Scored[] {
  const all = Object.entries(kind.fields).flatMap(([id, field]) => taken.has(`${kind.id}.${id}`) ? [] : headings.flatMap((heading): Scored[] => {
    const found = headingReadings(heading.text).flatMap((reading): Scored[] => {
      const score = names(id, field, reading.name)
      const unit = unitOf(field, reading.rest === '' ? reading.name : reading.rest)
      return score === 0 || (reading.rest !== '' && unit === undefined) ? [] : [{ field: id, heading, score, ...(unit === undefined ? {} : { unit }) }]
    })
    return found.length === 0 ? [] : [found.reduce((top, one) => one.score > top.score ? one : top)]
  }))
  const ownNames = new Set(all.filter(one => one.score === own).map(one => one.heading))
  return all.map(one => one.score === alias && ownNames.has(one.heading) ? { ...one, score: borrowed } : one)
}

/**
 * The order in which fields choose their columns: first those that an entry can't do without, so that `Tape` over the only lengths is the
 * distance and not which tape was used; then those called by their own name; then the rest.
 */
function inOrder(kind: Kind, found: readonly Scored[]): readonly string[] {
  const rank = (id: string) => kind.fields[id]!.required === true ? 0 : found.some(one => one.field === id && one.score === own) ? 1 : 2
  return [...new Set(found.map(one => one.field))].sort((a, b) => rank(a) - rank(b))
}

function names(id: string, field: Field, name: string): number {
  const said = loosely(name)
  if (said === loosely(id) || said === loosely(field.label)) return own
  return field.headings?.some(heading => loosely(heading) === said) === true ? alias : 0
}

/** A unit in the heading, or a heading that is a unit itself, as `long tons` over the quartz crushed. */
const unitOf = (field: Field, text: string): string | undefined =>
  field.is.type === 'quantity' && isUnit(text, field.is.dimension) ? text : undefined

function twoColumns(kind: Kind, field: string, a: Heading, b: Heading): Problem {
  const label = kind.fields[field]!.label
  const expected = `one column for ${label}; say which of the two`
  return { kind: kind.id, field, value: b.text, row: 1, expected, message: `${label}: both ${show(a.text)} and ${show(b.text)} may hold it; expected ${expected}.` }
}
