import type { Field } from '../kinds/index.ts'
import { kindOf } from '../schema/check-draft.ts'
import { choose } from './choose-in.ts'
import { placeFromParts } from './place-parts.ts'
import type { CsvOptions, Feed, PlacePart, Recipe } from './recipe.ts'
import { fieldNamed } from './field-named.ts'
import { noResult } from './no-result.ts'
import type { Row } from './table.ts'
import { headingName } from './table.ts'

/** What one row says for an entry of one kind, in the words that `input` reads. */
export interface RowTexts {
  readonly kind: string
  readonly texts: Readonly<Record<string, string>>
  readonly fieldUnits: Readonly<Record<string, string>>
  /** Words that were read as one of the choices of a field because the crew said so. */
  readonly readAs: readonly { readonly field: string, readonly text: string, readonly choice: string }[]
}

/** The texts of a row, one for each entry that it makes. A second kind makes none where the row holds nothing for it. */
export function rowTexts(row: Row, recipe: Recipe, options: CsvOptions): readonly RowTexts[] {
  const blank = new Set(['', ...(options.blank ?? [])].map(word => word.toLowerCase()))
  const cell = (column: number): string => { const text = row.cells[column] ?? ''; return blank.has(text.toLowerCase()) ? '' : text }
  return recipe.kinds.flatMap((id, order) => {
    const made = entryTexts(id, recipe, options, cell)
    if (order > 0 && !made.own) return []
    const rest = order === 0 && options.restToNote === true ? recipe.unused.filter(heading => cell(heading.column) !== '').map(heading => `${headingName(heading)}: ${cell(heading.column)}`) : []
    const note = [...made.texts['note'] === undefined ? [] : [made.texts['note']], ...rest].join('\n')
    return [{ kind: id, texts: note === '' ? made.texts : { ...made.texts, note }, fieldUnits: made.fieldUnits, readAs: made.readAs }]
  })
}

function entryTexts(id: string, recipe: Recipe, options: CsvOptions, cell: (column: number) => string): Omit<RowTexts, 'kind'> & { readonly own: boolean } {
  const kind = kindOf(id)!
  const texts: Record<string, string> = {}
  const fieldUnits: Record<string, string> = {}
  const readAs: { field: string, text: string, choice: string }[] = []
  const parts: Record<string, Partial<Record<PlacePart, string>>> = {}
  let own = false
  for (const feed of recipe.feeds) {
    if (feed.kind !== id) continue
    const field = kind.fields[feed.field]!
    const { text, unit } = cellText(feed, field, cell)
    if (text === '') continue
    const without = id === 'assay' && field.is.type === 'quantity' && field.is.dimension === 'grade' ? noResult(text) : undefined
    if (without !== undefined) {
      // A grade that was asked for and not given is said once, by the gold; the other metals stay empty.
      if (feed.field === 'gold') { texts['result'] = without; own = true }
      continue
    }
    own ||= !shared(feed, recipe)
    if (feed.part !== undefined) { (parts[feed.field] ??= {})[feed.part] = text; continue }
    const said = field.is.type === 'choice' ? choose(text, field.is, options.read ?? []) : undefined
    if (said?.by !== undefined) readAs.push({ field: feed.field, text: said.by, choice: said.choice })
    texts[feed.field] = said?.choice ?? dated(text, field, options.dates)
    if (unit !== undefined) fieldUnits[feed.field] = unit
  }
  for (const [field, given] of Object.entries(parts)) {
    const place = placeFromParts(texts[field] ?? '', given)
    if (place !== '') texts[field] = place
  }
  for (const [name, text] of Object.entries(options.fill ?? {})) {
    const target = fieldNamed(name, recipe.kinds.map(one => kindOf(one)!))
    if (target?.kinds.some(one => one.id === id) === true && texts[target.field] === undefined) texts[target.field] = text
  }
  return { texts, fieldUnits, readAs, own }
}

/** A column that names the entries of several kinds, such as the bag, says nothing of any one of them. */
const shared = (feed: Feed, recipe: Recipe): boolean =>
  recipe.feeds.some(other => other.kind !== feed.kind && other.field === feed.field && other.columns[0]?.heading.column === feed.columns[0]?.heading.column)

const bareNumber = /^[-+]?[\d.,/ ]*\d$/

function cellText(feed: Feed, field: Field, cell: (column: number) => string): { readonly text: string, readonly unit?: string } {
  const pieces = feed.columns.map(({ heading, unit }) => ({ text: cell(heading.column), unit })).filter(piece => piece.text !== '')
  const [first] = pieces
  if (!first) return { text: '' }
  const withUnit = (piece: { readonly text: string, readonly unit: string | undefined }, unit = piece.unit) =>
    unit !== undefined && bareNumber.test(piece.text) ? `${piece.text} ${unit}` : piece.text
  if (feed.part !== undefined) return { text: withUnit(first) }
  if (feed.columns.length === 1) return first.unit === undefined ? { text: first.text } : { text: first.text, unit: first.unit }
  if (field.is.type !== 'quantity') return { text: pieces.map(piece => piece.text).join(', ') }
  // Ounces and grains beside pennyweights are troy, which they need not be alone.
  const troy = field.is.dimension === 'mass' && feed.columns.some(({ unit }) => /^dwts?$/i.test(unit ?? ''))
  const inTroy = (unit: string | undefined) => !troy || unit === undefined ? unit : /^oz$/i.test(unit) ? 'ozt' : /^grs?$/i.test(unit) ? 'grain' : unit
  return { text: pieces.map(piece => withUnit(piece, inTroy(piece.unit))).join(' ') }
}

/** A date of three numbers with the year last, put in the one order that can be read in one way only. */
function dated(text: string, field: Field, order: CsvOptions['dates']): string {
  if (order === undefined || (field.is.type !== 'date' && field.is.type !== 'moment')) return text
  return text.replace(/^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})\b/, (_, a: string, b: string, year: string) => {
    const [day, month] = order === 'day first' ? [a, b] : [b, a]
    return `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`
  })
}
