import type { AnswerOr } from '@lodebook/answers'
import { isAnswer } from '@lodebook/answers'
import { sentences } from './problems.ts'
import { table } from './table.ts'

/** The parts of a page put under each other; those that are empty left out. */
export const page = (...parts: readonly string[]): string => parts.filter(part => part !== '').join('\n')
/** A part under its heading; nothing when it is empty. */
export const under = (heading: string, body: string): string => body === '' ? '' : `${heading}\n${body}`
export const cautionsPart = (cautions: readonly string[], width: number): string => under('Take care', sentences(cautions, width))

/** Figures by the names under which they can be opened. */
export const figuresPart = (answers: readonly AnswerOr<unknown>[], width: number): string =>
  table(answers.map(answer => isAnswer(answer) ? [answer.id, answer.sentence] : ['', answer.sentence]), { width, indent: 2 })

/** Numbers in columns; the first column holds names unless sides are given. */
export const figuresTable = (
  head: readonly string[], rows: readonly (readonly string[])[], width: number, sides: readonly ('left' | 'right')[] = head.map((_, column) => column === 0 ? 'left' : 'right'),
): string => rows.length === 0 ? '' : table(rows, { width, head, sides })

/** Units as they are printed over a column. */
export const short: Readonly<Record<string, string>> = { 'ozt/short ton': 'oz/ton', 'short ton': 'tons' }
