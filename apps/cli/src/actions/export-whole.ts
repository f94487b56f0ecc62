import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeSync } from 'node:fs'
import { resolve } from 'node:path'
import { exportLines } from '@lodebook/book'
import type { OpenBook } from '../book/open-book.ts'
import type { Io } from '../io/io.ts'

/** Writes the whole book as JSON Lines. A file is put in its place only when it is whole. */
export async function exportWhole(open: OpenBook, options: { readonly out?: string, readonly photos?: boolean }, io: Io): Promise<void> {
  const lines = exportLines(open.store, { blobs: options.photos !== false })
  if (options.out === undefined) {
    for await (const line of lines) io.out(line)
    return
  }
  const file = resolve(io.cwd, options.out)
  const part = `${file}.part`
  const handle = openSync(part, 'w')
  try {
    for await (const line of lines) writeSync(handle, line)
    fsyncSync(handle)
  } catch (failure) {
    rmSync(part, { force: true })
    throw failure
  } finally { closeSync(handle) }
  renameSync(part, file)
}
