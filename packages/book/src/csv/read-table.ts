import Papa from 'papaparse'
import { show } from '@lodebook/reckon'
import type { Problem } from '../schema/problem.ts'
import type { Heading, Row, Table } from './table.ts'
import { columnLetter, headingName } from './table.ts'

/** The longest cell and the widest table that are taken for what they seem; beyond that a quote was left open or the file is no table. */
const longestCell = 10_000
const widestTable = 500

/**
 * Reads a file of rows and columns: commas, semicolons, tabs or bars between cells, quotes doubled inside quotes (RFC 4180).
 *
 * The file is taken whole or not at all where its rows can't be told apart; problems of single rows are listed and the rows left out.
 */
export function readTable(text: string): { readonly table: Table, readonly problems: readonly Problem[] } {
  const separator = separatorOf(text)
  const empty: Table = { headings: [], rows: [], separator }
  if (text.trim() === '') return { table: empty, problems: [problem('file', '', 'a row of headings and rows below it', 'The file is empty')] }
  const parsed = Papa.parse<string[]>(text, { delimiter: separator, header: false, skipEmptyLines: false })
  const open = parsed.errors.find(error => error.code === 'MissingQuotes' || error.code === 'InvalidQuotes')
  if (open) return { table: empty, problems: [quoteProblem(parsed.data, open.row ?? 0)] }

  const lines = parsed.data.map((cells, index): Row => ({ row: index + 1, cells: cells.map(cell => cell.trim()) })).filter(line => line.cells.some(cell => cell !== ''))
  const [first, ...rest] = lines
  if (!first) return { table: empty, problems: [problem('file', '', 'a row of headings and rows below it', 'The file is empty')] }
  const headings = trimEnd(first.cells).map((cell, column): Heading => ({ column, letter: columnLetter(column), text: cell }))
  if (headings.length > widestTable) {
    return { table: empty, problems: [problem('file', headings.length, `no more than ${widestTable} columns`, `Row ${first.row} has ${headings.length} columns`, first.row)] }
  }
  const problems: Problem[] = [...headingProblems(headings, first.row, rest)]
  const rows = rest.flatMap((line): Row[] => {
    const wrong = rowProblem(line, headings)
    if (wrong) { problems.push(wrong); return [] }
    return [{ row: line.row, cells: headings.map(({ column }) => line.cells[column] ?? '') }]
  })
  return { table: { headings, rows, separator }, problems }
}

const problem = (field: string, value: unknown, expected: string, what: string, row?: number): Problem =>
  ({ field, value, expected, message: `${what}; expected ${expected}.`, ...(row === undefined ? {} : { row }) })

const trimEnd = (cells: readonly string[]): readonly string[] => cells.slice(0, cells.findLastIndex(cell => cell !== '') + 1)

/** The mark that parts the first rows into the most columns, the same number in each. */
function separatorOf(text: string): Table['separator'] {
  const scores = ([',', ';', '\t', '|'] as const).map((mark) => {
    const { data } = Papa.parse<string[]>(text.slice(0, 100_000), { delimiter: mark, header: false, skipEmptyLines: 'greedy', preview: 20 })
    const columns = data[0]?.length ?? 1
    const alike = data.filter(row => row.length === columns).length / Math.max(1, data.length)
    return { mark, score: columns > 1 ? columns * alike * alike : 0 }
  })
  return scores.reduce((best, one) => one.score > best.score ? one : best).mark
}

function headingProblems(headings: readonly Heading[], row: number, below: readonly Row[]): readonly Problem[] {
  const blank = headings.filter(heading => heading.text === '').flatMap((heading) => {
    const under = below.find(line => (line.cells[heading.column] ?? '') !== '')
    return under ? [problem(headingName(heading), under.cells[heading.column], 'one heading over each column; unmerge headings that span several',
      `Row ${row}: column ${heading.letter} has no heading, but row ${under.row} holds ${show(under.cells[heading.column])} in it`, row)] : []
  })
  const twice = headings.flatMap((heading, i) => {
    const before = headings.slice(0, i).find(other => other.text !== '' && other.text.toLowerCase() === heading.text.toLowerCase())
    return before ? [problem(heading.text, heading.text, 'a heading of its own over each column',
      `Row ${row}: ${show(heading.text)} stands over column ${before.letter} and column ${heading.letter}`, row)] : []
  })
  return [...blank, ...twice]
}

function rowProblem(line: Row, headings: readonly Heading[]): Problem | undefined {
  const long = line.cells.findIndex(cell => cell.length > longestCell)
  if (long >= 0) {
    const name = headings[long] ? headingName(headings[long]) : `column ${columnLetter(long)}`
    const length = line.cells[long]!.length
    return problem(name, line.cells[long]!.slice(0, 60), `no more than ${longestCell} in one cell`, `Row ${line.row}, ${name}: the cell holds ${length} characters`, line.row)
  }
  const width = line.cells.length
  const extra = line.cells.findIndex((cell, column) => column >= headings.length && cell !== '')
  if (extra >= 0) {
    return problem(`column ${columnLetter(extra)}`, line.cells[extra], `${headings.length} cells, one for each heading; put quotes round a cell with a separator in it`,
      `Row ${line.row}: ${show(line.cells[extra])} stands in column ${columnLetter(extra)}, past the last heading`, line.row)
  }
  if (width < headings.length) {
    return problem(headingName(headings[width]!), width, `${headings.length} cells, one for each heading`, `Row ${line.row}: there are only ${width} cells`, line.row)
  }
  return undefined
}

function quoteProblem(rows: readonly (readonly string[])[], index: number): Problem {
  const cells = rows[index] ?? rows.at(-1) ?? []
  const cell = cells.find(text => text.length > 200 || text.includes('"')) ?? cells.at(-1) ?? ''
  const name = rows[0]?.[cells.indexOf(cell)]?.trim() ?? ''
  return problem(name === '' || index === 0 ? 'file' : name, cell.slice(0, 60), 'quotes in pairs, and doubled inside quotes',
    `Row ${index + 1}: a quote is opened before ${show(cell.slice(0, 40))} and not closed as it should be`, index + 1)
}
