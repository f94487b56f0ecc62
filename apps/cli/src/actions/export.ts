import { resolve } from 'node:path'
import { exportLines, kindOf, kinds } from '@lodebook/book'
import { writeCsv } from '@lodebook/book/csv'
import { withBook } from '../book/open-book.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io/io.ts'
import { sheetOf } from '../print/sheet.ts'
import type { SheetOptions } from '../print/sheet.ts'
import { writeFile } from '../io/write-file.ts'
import { refuse } from '../refusal.ts'

export interface ExportOptions extends SheetOptions {
  readonly kind?: string
  readonly csv?: true
  readonly out?: string
  readonly photos?: boolean
  readonly struck?: true
}

/** `lodebook export`: the whole book as JSON Lines, the entries of one kind as a file of columns, or a drawing true to scale. */
export function exportBook(path: string, options: ExportOptions, io: Io): Promise<number> {
  const kind = options.kind === undefined ? undefined : kindOf(options.kind)
  if (!kind && (options.csv || options.kind !== undefined)) {
    throw refuse('--kind', options.kind, `the kind whose entries make the rows: one of ${Object.keys(kinds).join(', ')}`)
  }
  return withBook(path, io, async ({ book, store }) => {
    const entries = kind && (options.struck ? [...book.all.values()].filter(entry => entry.kind === kind.id) : book.of(kind.id))
    const pieces = options.sheet !== undefined ? [sheetOf(book, options)]
      : kind && entries ? [writeCsv(kind, entries)] : exportLines(store, { blobs: options.photos !== false })
    if (options.out !== undefined) await writeFile(resolve(io.cwd, options.out), pieces)
    else for await (const piece of pieces) io.out(piece)
    return exit.ok
  })
}
