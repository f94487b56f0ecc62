import { show } from '@lodebook/reckon'
import { exit } from './exit.ts'

/** One input that will not do, as it is said in text and in JSON: which field, what stood there, and what would be right. */
export interface Refused {
  readonly error: string
  readonly field: string
  readonly value: unknown
  readonly expected: string
  /** The row of a file, the first being 1; or the line of a book file. */
  readonly row?: number
}

/** Ends a command with a message and an exit code; nothing has been written. */
export class Refusal extends Error {
  override readonly name = 'Refusal'
  constructor(readonly refused: Refused, readonly code: number = exit.badInput) { super(refused.error) }
}

/** A refusal whose message is put together from its parts. */
export function refuse(field: string, value: unknown, expected: string, code: number = exit.badInput): Refusal {
  return new Refusal({ error: sentence(field, value, expected), field, value: plain(value), expected }, code)
}

export function sentence(field: string, value: unknown, expected: string): string {
  return value === undefined ? `${field} is missing; expected ${expected}` : `${field}: ${show(value)} will not do; expected ${expected}`
}

/** A value that JSON can carry and that keeps a message short: no undefined, no NaN, no megabytes. */
export function plain(value: unknown): unknown {
  if (value === undefined) return null
  if (typeof value === 'number' && !Number.isFinite(value)) return String(value)
  const text = JSON.stringify(value) as string | undefined
  return text === undefined || text.length > 1000 ? show(value) : value
}
