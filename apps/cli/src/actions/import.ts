import { closeSync, openSync, readFileSync, readSync, statSync } from 'node:fs'
import { resolve } from 'node:path'
import { kindOf, kinds } from '@lodebook/book'
import type { Io } from '../io/io.ts'
import { refuse } from '../refusal.ts'
import type { ImportOptions } from './import-options.ts'

const columnsOnly = ['map', 'unit', 'fill', 'read', 'blank', 'rest', 'dates', 'decimal', 'goodRows'] as const

/** `lodebook import`: a whole book in JSON Lines, or a file of columns. */
export async function importFile(path: string, from: string, options: ImportOptions, io: Io): Promise<number> {
  const file = resolve(io.cwd, from)
  if (statSync(file, { throwIfNoEntry: false })?.isDirectory() === true) throw refuse('file', from, 'a file; this is a folder')
  if (options.kind === undefined && beginsAsBook(file)) {
    const given = columnsOnly.find(name => options[name] !== undefined)
    if (given) throw refuse(`--${given}`, options[given], 'no such option with a whole book; it is for files of columns')
    const { importWhole } = await import('./import-whole.ts')
    return importWhole(path, from, file, options, io)
  }
  const bytes = new Uint8Array(readFileSync(file))
  if (bytes.length === 0) throw refuse('file', from, 'a file with something in it; this is an empty file')
  const { importColumns } = await import('./import-columns.ts')
  if (options.kind === undefined) throw refuse('--kind', undefined, await suggestion(bytes, io))
  const ids = options.kind.split('+').map(id => id.trim())
  const unknown = ids.find(id => !kindOf(id))
  if (unknown !== undefined) throw refuse('--kind', unknown, `one of ${Object.keys(kinds).join(', ')}; two of them as sample+assay`)
  return importColumns(path, from, bytes, ids, options, io)
}

/** A whole book begins with a brace; a heading hardly ever does. */
function beginsAsBook(file: string): boolean {
  const handle = openSync(file, 'r')
  try {
    const first = Buffer.alloc(64)
    const length = readSync(handle, first)
    return first.subarray(0, length).toString('latin1').replace(/^\xef\xbb\xbf/, '').trimStart().startsWith('{')
  } finally { closeSync(handle) }
}

/** Kinds whose needed fields all have a heading in the file. */
async function suggestion(bytes: Uint8Array, io: Io): Promise<string> {
  const { fold } = await import('@lodebook/book')
  const { previewCsv } = await import('@lodebook/book/csv')
  const book = fold([])
  const fits = Object.keys(kinds).map(kind => ({ kind, made: previewCsv(bytes, { kinds: [kind] }, { book, now: io.now() }) }))
    .filter(({ made }) => made.columns.some(column => column.feeds.length > 0) && !made.problems.some(problem => problem.row === 1))
    .sort((a, b) => fed(b.made.columns) - fed(a.made.columns)).slice(0, 3).map(({ kind }) => kind)
  return `what one row is: --kind with one of ${Object.keys(kinds).join(', ')}, or two as sample+assay${fits.length === 0 ? '' : `; these headings would do for ${fits.join(' or ')}`}`
}

const fed = (columns: readonly { readonly feeds: readonly unknown[] }[]): number => columns.filter(column => column.feeds.length > 0).length
