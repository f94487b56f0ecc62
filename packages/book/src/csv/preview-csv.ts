import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex } from '@noble/hashes/utils.js'
import { input } from '../input/index.ts'
import { kinds } from '../kinds/index.ts'
import { kindOf } from '../schema/check-draft.ts'
import type { Problem } from '../schema/problem.ts'
import { isError } from '../schema/problem.ts'
import { alreadyThere } from './already-there.ts'
import { checkTogether } from './check-together.ts'
import type { CsvPreview, RowDraft } from './csv-preview.ts'
import { columnUses } from './column-uses.ts'
import { decodeText } from './decode-text.ts'
import { inRow } from './in-row.ts'
import { makeRecipe } from './make-recipe.ts'
import { readTable } from './read-table.ts'
import type { CsvOptions, CsvTarget, Recipe } from './recipe.ts'
import { rowTexts } from './row-texts.ts'
import type { Row } from './table.ts'
import { takeUnitsRow } from './units-row.ts'

/**
 * Reads a file of columns and says what it would add to the book, row by row. Nothing is written; `drafts` is what may be, once the crew accepts.
 *
 * Each entry's id follows from the file's bytes, its row and its kind, so that the same file adds nothing a second time, on this device or another.
 * @param bytes  the file as it is
 */
export function previewCsv(bytes: Uint8Array, options: CsvOptions, target: CsvTarget): CsvPreview {
  const hash = bytesToHex(sha256(bytes))
  const nothing: CsvPreview = { sha256: hash, kinds: options.kinds, rows: 0, columns: [], drafts: [], already: [], readAs: [], problems: [] }
  const unknown = options.kinds.filter(id => !kindOf(id))
  if (unknown.length > 0 || options.kinds.length === 0) {
    const expected = `kinds of entry: ${Object.keys(kinds).join(', ')}`
    return { ...nothing, problems: [{ field: 'kind', value: unknown[0], expected, message: `${JSON.stringify(unknown[0] ?? '')} is no kind of entry; expected ${expected}.` }] }
  }
  const decoded = decodeText(bytes)
  if ('problem' in decoded) return { ...nothing, problems: [decoded.problem] }
  const read = readTable(decoded.text)
  const { table, units } = takeUnitsRow(read.table)
  if (table.headings.length === 0) return { ...nothing, problems: read.problems }
  const { recipe, problems } = makeRecipe(table, units, options)
  const columns = columnUses(recipe, table, options.restToNote === true)
  const early = [...read.problems, ...problems]
  if (problems.length > 0) return { ...nothing, rows: table.rows.length, columns, problems: early }

  const stations = new Set(target.book.of('shot').flatMap(({ fields }) => [fields['from'], fields['to']]).filter(name => typeof name === 'string'))
  const made = table.rows.flatMap(row => rowDrafts(row, recipe, options, target, hash, stations))
  const found = alreadyThere(made.map(({ draft }) => draft), target.book)
  const fresh = made.filter((_, i) => !found.has(i))
  const checked = checkTogether(fresh, target)
  const all: readonly Problem[] = [...early, ...fresh.flatMap(({ problems }) => problems), ...checked]
  const bad = new Set(all.filter(isError).map(problem => problem.row))
  return {
    sha256: hash, kinds: options.kinds, rows: table.rows.length, columns,
    drafts: fresh.filter(({ draft }) => !bad.has(draft.row)).map(({ draft }) => draft),
    already: [...found].map(([i, why]) => ({ row: made[i]!.draft.row, kind: made[i]!.draft.kind, ...why })),
    readAs: tally(fresh.flatMap(({ readAs }) => readAs)),
    problems: [...all].sort((a, b) => (a.row ?? 0) - (b.row ?? 0)),
  }
}

interface Made { readonly draft: RowDraft, readonly problems: readonly Problem[], readonly readAs: ReturnType<typeof rowTexts>[number]['readAs'] }

function rowDrafts(row: Row, recipe: Recipe, options: CsvOptions, target: CsvTarget, hash: string, stations: ReadonlySet<string>): readonly Made[] {
  return rowTexts(row, recipe, options).map(({ kind, texts, fieldUnits, readAs }) => {
    const origin = `csv:${hash}:${row.row}`
    const { set, problems } = input(kind, texts, { ...options.input, fieldUnits, stations, now: target.now })
    const draft: RowDraft = { row: row.row, entry: entryId(origin, kind), kind, set, origin }
    return { draft, problems: problems.map(problem => inRow(problem, row.row)), readAs }
  })
}

/** The id of the entry that a row makes: the same for the same file, row and kind, wherever it is imported. */
function entryId(origin: string, kind: string): string {
  const bytes = Uint8Array.from(`${origin}:${kind}`, letter => letter.charCodeAt(0))
  return bytesToHex(sha256(bytes)).slice(0, 24)
}

function tally(said: Made['readAs']): CsvPreview['readAs'] {
  const counts = new Map<string, { field: string, text: string, choice: string, rows: number }>()
  for (const one of said) {
    const key = JSON.stringify(one)
    const before = counts.get(key)
    if (before) before.rows++
    else counts.set(key, { ...one, rows: 1 })
  }
  return [...counts.values()]
}
