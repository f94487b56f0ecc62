import type { Posting } from '@lodebook/book'
import { isError } from '@lodebook/book'
import type { CsvPreview } from '@lodebook/book/csv'
import { previewCsv } from '@lodebook/book/csv'
import { crewInput } from '../book/crew-input.ts'
import type { OpenBook } from '../book/open-book.ts'
import { withBook, write, writer } from '../book/open-book.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io/io.ts'
import { previewPage } from '../print/preview.ts'
import { problemJson } from '../print/problems.ts'
import { refuse } from '../refusal.ts'
import type { ImportOptions } from './import-options.ts'
import { csvOptions } from './import-options.ts'

/**
 * Shows what a file of columns would add and, when it is accepted, writes it: all of it, or with `goodRows` the rows without an error.
 * @returns 2 when rows are refused, whether they were left out or kept the rest from being written
 */
export function importColumns(path: string, from: string, bytes: Uint8Array, kinds: readonly string[], typed: ImportOptions, io: Io): Promise<number> {
  const options = csvOptions(kinds, typed)
  if (typed.decimal !== undefined && typed.decimal !== '.' && typed.decimal !== ',') throw refuse('--decimal', typed.decimal, '"." or ","')
  const decimal = typed.decimal
  const look = ({ book }: OpenBook): CsvPreview =>
    previewCsv(bytes, { ...options, input: { ...crewInput(book, io.now()), ...(decimal === undefined ? {} : { decimal }) } }, { book, now: io.now() })
  return withBook(path, io, async (open) => {
    const made = look(open)
    const refused = made.problems.some(isError)
    let written: readonly Posting[] = []
    if (typed.accept && made.drafts.length > 0 && (!refused || typed.goodRows)) {
      const by = writer(typed.by, io)
      written = await write(open, by, io, now => now === open ? made.drafts : look(now).drafts)
    }
    const state = { from, accepted: typed.accept === true, written: written.length, refused }
    io.out(typed.json ? `${JSON.stringify(previewJson(made, state), null, 2)}\n` : previewPage(made, state, io.columns))
    return refused ? exit.badInput : exit.ok
  })
}

const previewJson = (made: CsvPreview, state: { readonly accepted: boolean, readonly written: number }) => ({
  sha256: made.sha256, kinds: made.kinds, rows: made.rows, columns: made.columns, ready: made.drafts.length, already: made.already, readAs: made.readAs,
  problems: made.problems.map(problemJson), ...state, drafts: made.drafts,
})
