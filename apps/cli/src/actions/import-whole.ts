import { createReadStream } from 'node:fs'
import { plural } from '@lodebook/answers'
import { importLines } from '@lodebook/book'
import { withBook } from '../book/open-book.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io/io.ts'
import { problemJson, sentences } from '../print/problems.ts'
import { Refusal } from '../refusal.ts'

/** Takes a whole book's file into a book, or nothing of it. What the book holds already is passed over. */
export function importWhole(path: string, from: string, file: string, options: { readonly json?: true }, io: Io): Promise<number> {
  return withBook(path, io, async (open) => {
    const made = await importLines(() => createReadStream(file), open.store)
    if (!made.ok) throw new Refusal(problemJson(made.problem))
    const { postings, added, blobs, faults } = made
    if (options.json) io.out(`${JSON.stringify({ postings, added, blobs, faults }, null, 2)}\n`)
    else {
      io.out(sentences([
        `${from}: ${plural(postings, 'posting')}, ${added} of them new to the book.${blobs > 0 ? ` ${blobs} photos or other files.` : ''}`,
        ...faults.map(fault => fault.message),
      ], io.columns))
    }
    return faults.length === 0 ? exit.ok : exit.problems
  })
}
