import { basename } from 'node:path'
import type { Posting } from '@lodebook/book'
import { isError } from '@lodebook/book'
import type { CsvPreview } from '@lodebook/book/csv'
import { certificateDrafts, previewCsv } from '@lodebook/book/csv'
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
 * A file of assays that names its certificates is kept whole beside them.
 * @returns 2 when rows are refused and nothing was written; with `goodRows` the rows left out are listed and it ends well
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
      const kept = (seen: CsvPreview, now: OpenBook) => certificateDrafts(seen, { name: basename(from), bytes: bytes.length }, now.book)
      if (kept(made, open).length > 0) await open.store.putBlob(made.sha256, bytes)
      written = await write(open, by, io, (now) => { const seen = now === open ? made : look(now); return [...seen.drafts, ...kept(seen, now)] })
    }
    const certificates = written.filter(posting => posting.kind === 'certificate').length
    const state = { from, accepted: typed.accept === true, written: written.length - certificates, certificates, refused }
    const failed = refused && written.length === 0
    if (!typed.json) io.out(previewPage(made, state, io.columns))
    else if (failed) io.err(`${JSON.stringify({ ...problemJson(made.problems.find(isError)!), ...previewJson(made, state) })}\n`)
    else io.out(`${JSON.stringify(previewJson(made, state), null, 2)}\n`)
    return failed ? exit.badInput : exit.ok
  })
}

const previewJson = (made: CsvPreview, state: { readonly accepted: boolean, readonly written: number }) => ({
  sha256: made.sha256, kinds: made.kinds, rows: made.rows, columns: made.columns, ready: made.drafts.length, already: made.already, readAs: made.readAs,
  problems: made.problems.map(problemJson), ...state, drafts: made.drafts,
})
