import { entryTitle } from '@lodebook/answers'
import type { Draft, Problem } from '@lodebook/book'
import { checkDraft, fold, input, isError, kindOf, kinds, newEntryId } from '@lodebook/book'
import { assignments } from '../book/assignments.ts'
import { crewInput } from '../book/crew-input.ts'
import { findEntry } from '../book/find-entry.ts'
import type { OpenBook } from '../book/open-book.ts'
import { withBook, write, writer } from '../book/open-book.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io/io.ts'
import { problemJson, sentences } from '../print/problems.ts'
import { promptMessage } from '../print/prompt-message.ts'
import { Refusal, refuse } from '../refusal.ts'

export interface WriteOptions { readonly by?: string, readonly why?: string, readonly json?: true }

/** `lodebook add`: one new entry. */
export function addEntry(path: string, kindId: string, words: readonly string[], options: WriteOptions, io: Io): Promise<number> {
  const kind = kindOf(kindId)
  if (!kind) throw refuse('kind', kindId, `one of ${Object.keys(kinds).join(', ')}`)
  const { texts } = assignments(kind, words)
  return writeOne(path, options, io, (open) => {
    const { set, problems } = input(kindId, texts, { ...crewInput(open.book, io.now()), book: open.book, now: io.now() })
    return { draft: { entry: newEntryId(open.device), kind: kindId, set }, problems }
  })
}

/** `lodebook set`: other values for fields of an entry; `field=` takes a value away. */
export function setFields(path: string, said: string, words: readonly string[], options: WriteOptions, io: Io): Promise<number> {
  return writeOne(path, options, io, (open) => {
    const entry = findEntry(open.book, said)
    const kind = kinds[entry.kind]!
    const { texts, away } = assignments(kind, words)
    const checking = { book: open.book, entry: entry.id, now: io.now() }
    const read = input(entry.kind, texts, { ...crewInput(open.book, io.now()), ...checking })
    const set = { ...read.set, ...Object.fromEntries(away.map(field => [field, null])) }
    const problems = away.length === 0 ? read.problems : [...read.problems.filter(isError), ...checkDraft(entry.kind, set, checking)]
    return { draft: { entry: entry.id, kind: entry.kind, set }, problems }
  })
}

/** `lodebook strike` and `lodebook restore`: nothing is erased. */
export function strikeEntry(path: string, said: string, struck: boolean, options: WriteOptions, io: Io): Promise<number> {
  return writeOne(path, options, io, (open) => {
    const entry = findEntry(open.book, said)
    if (entry.struck === struck) throw refuse('entry', said, struck ? 'an entry that is not struck already' : 'an entry that is struck')
    return { draft: { entry: entry.id, kind: entry.kind, set: {}, struck }, problems: [] }
  })
}

type Make = (open: OpenBook) => { readonly draft: Draft, readonly problems: readonly Problem[] }

function writeOne(path: string, options: WriteOptions, io: Io, make: Make): Promise<number> {
  const by = writer(options.by, io)
  return withBook(path, io, async (open) => {
    let doubts: readonly Problem[] = []
    const postings = await write(open, by, io, (now) => {
      const { draft, problems } = make(now)
      const [wrong] = problems.filter(isError)
      if (wrong) throw new Refusal(problemJson(wrong))
      doubts = problems
      return [{ ...draft, ...(options.why === undefined ? {} : { why: options.why }) }]
    })
    const entry = fold([...open.postings, ...postings]).all.get(postings[0]!.entry)!
    if (options.json) io.out(`${JSON.stringify({ entry: entry.id, title: entryTitle(entry), struck: entry.struck, fields: entry.fields, doubts: doubts.map(problemJson) }, null, 2)}\n`)
    else io.out(`${entryTitle(entry)} ${entry.struck ? 'is struck through' : 'is written'}: entry ${entry.id}.\n${sentences(doubts.map(doubt => `Doubt: ${promptMessage(doubt)}`), io.columns)}`)
    return exit.ok
  })
}
