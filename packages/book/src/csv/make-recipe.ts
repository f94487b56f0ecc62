import { show } from '@lodebook/reckon'
import type { Kind } from '../kinds/index.ts'
import { kindOf } from '../schema/check-draft.ts'
import type { Problem } from '../schema/problem.ts'
import { fieldNamed } from './field-named.ts'
import { headingReadings, isUnit, loosely } from './heading-text.ts'
import { matchHeadings } from './match-headings.ts'
import { isLengthPart, placePartNamed } from './place-parts.ts'
import type { ColumnMap, CsvOptions, FedColumn, Feed, Recipe } from './recipe.ts'
import { placeParts } from './recipe.ts'
import type { Heading, Table } from './table.ts'
import { headingName } from './table.ts'

/**
 * Settles which columns feed which fields and in what units.
 * @param rowUnits  units by column, from a row of units
 */
export function makeRecipe(table: Table, rowUnits: ReadonlyMap<number, string>, options: CsvOptions):
{ readonly recipe: Recipe, readonly problems: readonly Problem[] } {
  const problems: Problem[] = []
  const kinds = options.kinds.flatMap(id => kindOf(id) ?? [])
  const unitOf = (heading: Heading, field: string, fromHeading: string | undefined): string | undefined =>
    unitFor(options.units ?? {}, heading, field) ?? rowUnits.get(heading.column) ?? fromHeading

  const told = (options.map ?? []).flatMap((map) => {
    const feed = toldFeed(map, kinds, table.headings, unitOf)
    if ('feeds' in feed) return feed.feeds
    problems.push(feed)
    return []
  })
  const taken = {
    fields: new Set(told.filter(feed => feed.part === undefined).map(feed => `${feed.kind}.${feed.field}`)),
    columns: new Set(told.flatMap(feed => feed.columns.map(({ heading }) => heading.column))),
  }
  const matched = matchHeadings(kinds, table.headings, taken)
  problems.push(...matched.problems)
  const matches = matched.matches.map(({ kind, field, heading, unit }): Feed => ({ kind, field, columns: [column(heading, unitOf(heading, field, unit))] }))
  const used = new Set([...taken.columns, ...matches.flatMap(feed => feed.columns.map(({ heading }) => heading.column))])
  const parts = partFeeds(kinds, table.headings.filter(heading => !used.has(heading.column)), told, unitOf)
  for (const feed of parts) for (const { heading } of feed.columns) used.add(heading.column)

  const feeds = [...told, ...matches, ...parts]
  const asked = (problem: Problem) => matched.problems.some(({ kind, field }) => kind === problem.kind && field === problem.field)
  problems.push(...fedTwice(told), ...unknownFills(options.fill ?? {}, kinds),
    ...unknownUnits(options.units ?? {}, table.headings, kinds), ...misfitUnits(feeds),
    ...unfed(kinds, feeds, options.fill ?? {}, table.headings).filter(problem => !asked(problem)))
  const unused = table.headings.filter(heading => heading.text !== '' && !used.has(heading.column))
  return { recipe: { kinds: options.kinds, feeds, unused }, problems }
}

const column = (heading: Heading, unit: string | undefined): FedColumn => unit === undefined ? { heading } : { heading, unit }

type UnitOf = (heading: Heading, field: string, fromHeading: string | undefined) => string | undefined

function unitFor(units: Readonly<Record<string, string>>, heading: Heading, field: string): string | undefined {
  const named = Object.keys(units).find(key => loosely(key) === loosely(heading.text)) ?? Object.keys(units).find(key => loosely(key) === loosely(field))
  return named === undefined ? undefined : units[named]
}

/** What the crew says of a column: the feeds it makes, one for each kind that the field joins, or what is wrong with it. */
function toldFeed(map: ColumnMap, kinds: readonly Kind[], headings: readonly Heading[], unitOf: UnitOf): Problem | { readonly feeds: readonly Feed[] } {
  const found = map.headings.map(name => headings.find(heading => heading.text === name) ?? headings.find(heading => loosely(heading.text) === loosely(name) && loosely(name) !== '')
    ?? headings.find(heading => heading.letter === name))
  const lost = found.findIndex(heading => heading === undefined)
  if (lost >= 0) return refusal(map.headings[lost]!, map.headings[lost], `a heading of the file: ${headings.map(headingName).join(', ')}`)
  const target = fieldNamed(map.field, kinds)
  if (!target) return refusal(map.headings.join(' + '), map.field, `a field of ${kinds.map(kind => kind.id).join(' or ')}: ${kinds.flatMap(kind => Object.keys(kind.fields)).join(', ')}`)
  return {
    feeds: target.kinds.map(({ id, fields }): Feed => {
      const is = fields[target.field]!.is
      const dimension = target.part !== undefined ? 'length' as const : is.type === 'quantity' ? is.dimension : undefined
      return {
        kind: id, field: target.field, ...(target.part === undefined ? {} : { part: target.part }),
        columns: (found as Heading[]).map((heading) => {
          const own = dimension && [...headingReadings(heading.text)].reverse().flatMap(({ name, rest }) => [rest, name]).find(text => text !== '' && isUnit(text, dimension))
          return column(heading, unitOf(heading, target.field, own))
        }),
      }
    }),
  }
}

const refusal = (field: string, value: unknown, expected: string): Problem =>
  ({ field, value, row: 1, expected, message: `${show(value)} will not do for ${show(field)}; expected ${expected}.` })

/** Columns left over that hold parts of a place: how far along, which side, east, north. */
function partFeeds(kinds: readonly Kind[], headings: readonly Heading[], told: readonly Feed[], unitOf: UnitOf): readonly Feed[] {
  const kind = kinds.find(({ fields }) => Object.values(fields).some(({ is }) => is.type === 'place'))
  const field = kind && Object.keys(kind.fields).find(name => kind.fields[name]!.is.type === 'place')
  if (!kind || field === undefined) return []
  const feeds: Feed[] = []
  for (const heading of headings) {
    const reading = headingReadings(heading.text).find(({ name, rest }) => {
      const part = placePartNamed(name)
      return part !== undefined && (rest === '' || (isLengthPart(part) && isUnit(rest, 'length')))
    })
    const part = reading && placePartNamed(reading.name)
    if (!part || [...told, ...feeds].some(feed => feed.part === part)) continue
    feeds.push({ kind: kind.id, field, part, columns: [column(heading, isLengthPart(part) ? unitOf(heading, part, reading.rest || undefined) : undefined)] })
  }
  return feeds
}

/** Two sayings about one field: one of them would be lost. */
const fedTwice = (told: readonly Feed[]): readonly Problem[] => told.flatMap((feed, i) => {
  const before = told.slice(0, i).some(other => other.kind === feed.kind && other.field === feed.field && other.part === feed.part)
  return before ? [refusal(feed.columns.map(({ heading }) => headingName(heading)).join(' + '), feed.field, 'a field that is mapped once; columns for one field go together')] : []
})

const unknownFills = (fill: Readonly<Record<string, string>>, kinds: readonly Kind[]): readonly Problem[] =>
  Object.keys(fill).flatMap(name => fieldNamed(name, kinds) ? [] : [refusal(name, fill[name], `a field of ${kinds.map(kind => kind.id).join(' or ')} to fill`)])

function unknownUnits(units: Readonly<Record<string, string>>, headings: readonly Heading[], kinds: readonly Kind[]): readonly Problem[] {
  const names = new Set([...headings.map(heading => heading.text), ...kinds.flatMap(kind => Object.keys(kind.fields)), ...placeParts].map(loosely))
  return Object.keys(units).filter(key => !names.has(loosely(key))).map(key => refusal(key, units[key], `a heading or a field to give the unit to: ${headings.map(headingName).join(', ')}`))
}

function misfitUnits(feeds: readonly Feed[]): readonly Problem[] {
  return feeds.flatMap((feed) => {
    const is = kindOf(feed.kind)?.fields[feed.field]?.is
    const dimension = feed.part !== undefined ? 'length' as const : is?.type === 'quantity' ? is.dimension : undefined
    if (dimension === undefined) return []
    return feed.columns.flatMap(({ heading, unit }) => unit === undefined || isUnit(unit, dimension) ? [] : [refusal(headingName(heading), unit, `a unit of ${dimension}`)])
  })
}

/** Fields that an entry can't do without and that neither a column nor a filling feeds. */
function unfed(kinds: readonly Kind[], feeds: readonly Feed[], fill: Readonly<Record<string, string>>, headings: readonly Heading[]): readonly Problem[] {
  const filled = new Set(Object.keys(fill).flatMap((name) => { const at = fieldNamed(name, kinds); return at ? at.kinds.map(kind => `${kind.id}.${at.field}`) : [] }))
  return kinds.flatMap(kind => Object.entries(kind.fields).flatMap(([field, { label, required }]) =>
    required !== true || filled.has(`${kind.id}.${field}`) || feeds.some(feed => feed.kind === kind.id && feed.field === field) ? [] : [{
      kind: kind.id, field, value: undefined, row: 1, expected: `a column for ${label}, or one value for every row`,
      message: `${label} (${kind.id}): no column is headed so; expected a column for it, or one value for every row. The headings are ${headings.map(headingName).join(', ')}.`,
    }]))
}
