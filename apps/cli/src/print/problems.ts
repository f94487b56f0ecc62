import type { Problem } from '@lodebook/book'
import { isError } from '@lodebook/book'
import { plain } from '../refusal.ts'
import { promptMessage } from './prompt-message.ts'
import type { Refused } from '../refusal.ts'
import { wrap } from './wrap.ts'

/** Sentences one under the other, each broken to fit with its further lines set in. */
export const sentences = (lines: readonly string[], width: number): string =>
  lines.flatMap(line => wrap(line, width - 2).map((piece, i) => `${i === 0 ? '' : '  '}${piece}\n`)).join('')

/** Errors, then doubts, each under its heading; no more than `most` of each. */
export function problemList(problems: readonly Problem[], width: number, most = 20): string {
  const part = (heading: string, list: readonly Problem[]): string => list.length === 0 ? ''
    : `${heading}\n${sentences(list.slice(0, most).map(promptMessage), width)}${list.length > most ? `… and ${list.length - most} more; --json lists them all\n` : ''}`
  return [part('Problems', problems.filter(isError)), part('Doubts', problems.filter(problem => !isError(problem)))].filter(text => text !== '').join('\n')
}

export interface ProblemJson extends Refused { readonly kind?: string, readonly entry?: string, readonly doubt?: true }

/** A problem as JSON says it. */
export const problemJson = ({ message, field, value, expected, row, kind, entry, warning }: Problem): ProblemJson => ({
  error: promptMessage({ field, message, ...(kind === undefined ? {} : { kind }) }),
  field, value: plain(value), expected, ...(row === undefined ? {} : { row }), ...(kind === undefined ? {} : { kind }),
  ...(entry === undefined ? {} : { entry }), ...(warning === true ? { doubt: true } : {}),
})
