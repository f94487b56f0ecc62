import { kinds } from '@lodebook/book'
import { isError } from '@lodebook/book'
import type { ColumnUse, CsvPreview, RowDraft } from '@lodebook/book/csv'
import { entriesTable } from './entries.ts'
import { problemList, sentences } from './problems.ts'
import { plural } from '@lodebook/answers'
import { table } from './table.ts'
import { cut } from './wrap.ts'

export interface ImportState {
  readonly from: string
  readonly accepted: boolean
  readonly written: number
  /** Certificates that were written with the assays that name them. */
  readonly certificates: number
  readonly refused: boolean
}

const shownRows = 5

/** What a file of columns would add to the book, as a page: its columns, its first entries, its problems, and what to do next. */
export function previewPage(made: CsvPreview, state: ImportState, width: number): string {
  const names = made.kinds.map(id => kinds[id]?.plural.toLowerCase() ?? id).join(' and ')
  return [
    `${state.from}: ${plural(made.rows, 'row')} of ${names}\n`,
    columnsPart(made.columns, made.kinds, width),
    readPart(made, width),
    draftsPart(made.drafts, width),
    problemList(made.problems, width),
    endPart(made, state, width),
  ].filter(part => part !== '').join('\n')
}

function columnsPart(columns: readonly ColumnUse[], ids: readonly string[], width: number): string {
  if (columns.length === 0) return ''
  const rows = columns.map(({ heading, feeds, toNote, example }) => [
    heading,
    feeds.length === 0 ? (toNote ? 'the note' : 'nothing: left out') : feeds.map(feed => `${ids.length > 1 ? `${feed.kind} ` : ''}${feed.field}`).join(', '),
    [...new Set(feeds.flatMap(feed => feed.unit ?? []))].join(', '),
    cut(example, 18),
  ])
  return table(rows, { width, head: ['Column', 'Feeds', 'In', 'First cell'] })
}

const readPart = (made: CsvPreview, width: number): string =>
  sentences(made.readAs.map(({ text, field, choice, rows }) => `“${text}” is read as ${field} ${choice} in ${plural(rows, 'row')}.`), width)

function draftsPart(drafts: readonly RowDraft[], width: number): string {
  return [...new Set(drafts.map(draft => draft.kind))].map((id) => {
    const own = drafts.filter(draft => draft.kind === id)
    const entries = own.slice(0, shownRows).map(draft => ({
      id: draft.entry, kind: id, fields: Object.fromEntries(Object.entries(draft.set).flatMap(([name, value]) => value === null ? [] : [[name, value]])),
      struck: false, createdBy: '', createdAt: '', changedAt: '', history: {},
    }))
    return `${own.length > shownRows ? `The first ${shownRows} of ${own.length} ${kinds[id]!.plural.toLowerCase()}` : kinds[id]!.plural}\n${entriesTable(kinds[id]!, entries, width)}`
  }).join('\n')
}

function endPart(made: CsvPreview, { accepted, written, certificates, refused }: ImportState, width: number): string {
  const already = made.already.length === 0 ? '' : `${plural(made.already.length, 'entry', 'entries')} in the book already. `
  const errors = made.problems.filter(isError)
  // The headings, the encoding or an empty file are no single row's fault.
  const whole = made.rows === 0 || errors.some(problem => problem.row === undefined || problem.row === 1)
  const bad = new Set(errors.map(problem => problem.row)).size
  const refusedRows = !refused ? '' : whole ? 'The file can\'t be read as it stands: see above. ' : `${plural(bad, 'row')} refused. `
  const keptFile = certificates === 0 ? '' : ` The file is kept whole as ${plural(certificates, 'certificate')}, under its hash.`
  const next = written > 0 ? `${plural(written, 'entry', 'entries')} written.${keptFile}`
    : made.drafts.length === 0 ? 'Nothing to write; the book is as it was.'
      : accepted ? 'Nothing was written; the book is as it was. Mend the rows, or add --good-rows to leave them out.'
        : refused ? `Nothing is written yet. --accept --good-rows would write ${plural(made.drafts.length, 'entry', 'entries')} and leave the refused rows out.`
          : `Nothing is written yet. --accept writes ${plural(made.drafts.length, 'entry', 'entries')}.`
  return sentences([`${already}${refusedRows}${next}`], width)
}
