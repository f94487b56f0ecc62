import { writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { kindOf, kinds } from '@lodebook/book'
import { writeCsv } from '@lodebook/book/csv'
import { withBook } from '../book/open-book.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io/io.ts'
import { refuse } from '../refusal.ts'

export interface ExportOptions { readonly kind?: string, readonly csv?: true, readonly out?: string, readonly photos?: boolean, readonly struck?: true }

/** `lodebook export`: the whole book as JSON Lines, or the entries of one kind as a file of columns. */
export function exportBook(path: string, options: ExportOptions, io: Io): Promise<number> {
  if (options.csv && options.kind === undefined) throw refuse('--kind', undefined, `the kind whose entries make the rows: one of ${Object.keys(kinds).join(', ')}`)
  const kind = options.kind === undefined ? undefined : kindOf(options.kind)
  if (options.kind !== undefined && !kind) throw refuse('--kind', options.kind, `one of ${Object.keys(kinds).join(', ')}`)
  return withBook(path, io, async (open) => {
    if (!kind) {
      const { exportWhole } = await import('./export-whole.ts')
      await exportWhole(open, options, io)
    } else {
      const entries = options.struck ? [...open.book.all.values()].filter(entry => entry.kind === kind.id) : open.book.of(kind.id)
      deliver(writeCsv(kind, entries), options.out, io)
    }
    return exit.ok
  })
}

/** To a file where one is named, otherwise to standard output. */
export function deliver(text: string, out: string | undefined, io: Io): void {
  if (out === undefined) io.out(text)
  else writeFileSync(resolve(io.cwd, out), text)
}
