import { readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { labelsOn } from '@lodebook/answers'
import type { Entry } from '@lodebook/book'
import { labelSheets } from '@lodebook/paper'
import type { PaperName } from '@lodebook/paper'
import { withBook } from '../book/open-book.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io/io.ts'
import { writeFile } from '../io/write-file.ts'
import { refuse } from '../refusal.ts'

export interface LabelsOptions { readonly roll?: string, readonly out: string, readonly paper: string, readonly copies: string }

const papers: Readonly<Record<string, PaperName>> = { a4: 'A4', letter: 'Letter' }

/** `lodebook labels`: the labels of a roll as sheets for the printer. */
export function printLabels(path: string, { roll, out, paper, copies }: LabelsOptions, io: Io): Promise<number> {
  const sheet = papers[paper.toLowerCase()]
  if (!sheet) throw refuse('--paper', paper, 'A4 or Letter')
  if (copies !== '1' && copies !== '2') throw refuse('--copies', copies, '1 or 2')
  return withBook(path, io, async ({ book }) => {
    const entry = rollNamed(book.of('label-roll'), roll), labels = labelsOn(entry), mine = book.of('mine').at(-1)?.fields['name']
    const pdf = await labelSheets({
      labels, paper: sheet, copies: copies === '1' ? 1 : 2, mine: typeof mine === 'string' ? mine : '', made: io.now(), fonts: { regular: font(io, 400), bold: font(io, 700) },
    })
    await writeFile(resolve(io.cwd, out), [pdf])
    io.out(`${labels[0]!} to ${labels.at(-1)!} on ${sheet}, ${copies === '1' ? 'one' : 'two'} of each: ${out}\nPrint at full size and hold a rule to the line at the foot.\n`)
    return exit.ok
  })
}

/** The roll that is meant: by its entry, its prefix or its first label; the latest when nothing is said. */
function rollNamed(rolls: readonly Entry[], said: string | undefined): Entry {
  const one = said === undefined ? rolls.at(-1) : rolls.find(r => r.id === said || labelsOn(r)[0] === said) ?? rolls.findLast(r => r.fields['prefix'] === said)
  if (one) return one
  throw refuse('--roll', said, rolls.length === 0 ? 'a roll that is written; begin one with: lodebook add BOOK label-roll prefix=B- first=1 last=60'
    : `one of ${rolls.map(r => `${r.id} (${labelsOn(r)[0] ?? ''})`).join(', ')}`)
}

const font = (io: Io, weight: number): Uint8Array =>
  new Uint8Array(readFileSync(join(io.root, `node_modules/@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-${weight}-normal.woff`)))
