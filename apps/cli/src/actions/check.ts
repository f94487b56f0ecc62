import { createReckoner, entryTitle, plural } from '@lodebook/answers'
import type { Book, Posting, Problem } from '@lodebook/book'
import { checkDraft, clocksAhead, conflicts, isError, kinds, untied, verifyChain } from '@lodebook/book'
import { valueText } from '@lodebook/book/csv'
import { withBook } from '../book/open-book.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io/io.ts'
import { problemJson, problemList } from '../print/problems.ts'

/** `lodebook check`: whether the record is whole, and what in it will not do or is doubtful. */
export function checkBook(path: string, options: { readonly json?: true }, io: Io): Promise<number> {
  return withBook(path, io, ({ postings, book }) => {
    const now = io.now()
    const problems = [...chainProblems(postings, now), ...entryProblems(book, now), ...conflictProblems(book), ...untiedProblems(book), ...oddProblems(book)]
    const errors = problems.filter(isError).length
    if (options.json) {
      io.out(`${JSON.stringify({ postings: postings.length, entries: book.all.size, errors, doubts: problems.length - errors, problems: problems.map(problemJson) }, null, 2)}\n`)
    } else {
      const devices = new Set(postings.map(posting => posting.device)).size
      const chains = problems.some(problem => problem.field === 'posting') ? 'the chains are not whole' : 'every chain is whole and unaltered'
      io.out(`${plural(postings.length, 'posting')} of ${plural(devices, 'device')}: ${chains}.\n`)
      io.out(problems.length === 0 ? `${plural(book.all.size, 'entry', 'entries')}: nothing to say.\n` : `\n${problemList(problems, io.columns, 100)}`)
    }
    return errors === 0 ? exit.ok : exit.problems
  })
}

const chainProblems = (postings: readonly Posting[], now: number): readonly Problem[] => [
  ...verifyChain(postings).map(({ device, seq, sort, message }): Problem => ({ field: 'posting', value: `${device} ${seq}`, expected: `a posting that is not ${sort}`, message })),
  ...clocksAhead(postings, now).map(({ device, message }): Problem => ({ field: 'clock', value: device, expected: 'a clock that is set right', message, warning: true })),
]

/** What every entry says by itself and in the light of the others. */
const entryProblems = (book: Book, now: number): readonly Problem[] => [...book.all.values()].filter(entry => !entry.struck).flatMap(entry =>
  checkDraft(entry.kind, entry.fields, { book, entry: entry.id, now }).map((problem): Problem => ({ ...problem, message: `${entryTitle(entry)}: ${problem.message}` })))

const conflictProblems = (book: Book): readonly Problem[] => conflicts(book).map(({ entry: id, kind, field, sayings }): Problem => {
  const is = kinds[kind]?.fields[field]
  const said = sayings.map(({ by, value }) => `${by} says ${value === null || !is ? 'nothing' : valueText(is, value)}`).join(', ')
  return {
    kind, entry: id, field, value: sayings.map(saying => saying.by), warning: true, expected: 'one value, written by somebody who has seen them all',
    message: `${entryTitle(book.all.get(id)!)}: ${is?.label ?? field} was written twice without knowing of each other: ${said}; the last counts until somebody writes it again.`,
  }
})

function untiedProblems(book: Book): readonly Problem[] {
  const stations = [...untied(book)]
  return stations.length === 0 ? [] : [{
    kind: 'tie', field: 'station', value: stations, warning: true, expected: 'a tie to grid or GPS',
    message: `No chain of shots joins ${stations.slice(0, 12).join(', ')}${stations.length > 12 ? ` and ${stations.length - 12} more` : ''} to a tie: they have a shape but no place on the ground.`,
  }]
}

/** What does not fit the rest: a foresight and its backsight, a blank that carries gold, a width beside its neighbours. */
const oddProblems = (book: Book): readonly Problem[] => createReckoner(book).answer('secondLooks').map(({ sort, entries, sentence, todo }): Problem => ({
  ...entries[0] === undefined ? {} : { entry: entries[0] }, field: sort, value: entries, expected: todo, warning: true, message: `${sentence} ${todo}`,
}))
