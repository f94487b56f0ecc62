import { entryTitle, plural } from '@lodebook/answers'
import { kindOf, kinds } from '@lodebook/book'
import { findEntry } from '../book/find-entry.ts'
import type { OpenBook } from '../book/open-book.ts'
import { withBook } from '../book/open-book.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io/io.ts'
import { entriesTable } from '../print/entries.ts'
import { entryPage } from '../print/entry.ts'
import { table } from '../print/table.ts'
import { when } from '../print/when.ts'

/** `lodebook show`: what the book holds, the entries of a kind, or one entry with its history. */
export function showBook(path: string, what: string | undefined, options: { readonly json?: true, readonly struck?: true }, io: Io): Promise<number> {
  return withBook(path, io, (open) => {
    const kind = what === undefined ? undefined : kindCalled(what)
    if (what === undefined) io.out(options.json ? json(summary(open)) : summaryPage(open, io.columns))
    else if (kind) {
      const entries = options.struck ? [...open.book.all.values()].filter(entry => entry.kind === kind.id) : open.book.of(kind.id)
      if (options.json) io.out(json(entries))
      else io.out(entries.length === 0 ? `No ${kind.plural.toLowerCase()} are written yet.\n` : entriesTable(kind, entries, io.columns))
    } else {
      const entry = findEntry(open.book, what)
      io.out(options.json ? json({ title: entryTitle(entry), ...entry }) : entryPage(entry, io.columns))
    }
    return exit.ok
  })
}

/** A kind by its id, or by what one or several of it are called. */
const kindCalled = (said: string) =>
  kindOf(said) ?? Object.values(kinds).find(({ label, plural }) => [label, plural].some(name => name.toLowerCase() === said.toLowerCase()))

const json = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`

function summary({ postings, book }: OpenBook) {
  const all = [...book.all.values()]
  return {
    mine: book.of('mine').at(-1)?.fields['name'] ?? null,
    entries: Object.fromEntries(Object.keys(kinds).flatMap(kind => book.of(kind).length === 0 ? [] : [[kind, book.of(kind).length]])),
    struck: all.filter(entry => entry.struck).length,
    postings: postings.length,
    people: [...new Set(postings.map(posting => posting.by))].sort(),
    devices: [...new Set(postings.map(posting => posting.device))].sort(),
    changed: all.reduce<string | null>((last, entry) => last === null || entry.changedAt > last ? entry.changedAt : last, null),
  }
}

function summaryPage(open: OpenBook, width: number): string {
  const { mine, entries, struck, postings, people, changed } = summary(open)
  const rows = Object.entries(entries).map(([kind, count]) => [String(count), count === 1 ? kinds[kind]!.label : kinds[kind]!.plural, kind])
  const head = typeof mine === 'string' ? `${mine}\n\n` : 'A book without a mine yet; begin with: lodebook add BOOK mine name=…\n\n'
  const written = changed === null ? 'Nothing is written yet.\n'
    : `\n${plural(postings, 'posting')} by ${people.join(', ')}; last on ${when(changed)}.${struck === 0 ? '' : ` ${struck} struck through.`}\n`
  return head + table(rows, { width, sides: ['right', 'left', 'left'], indent: 2 }) + written
}
