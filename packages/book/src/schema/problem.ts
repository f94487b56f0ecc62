import { show } from '@lodebook/reckon'

/**
 * Why something written down will not do, in one sentence for the person who wrote it.
 * A warning is a doubt about something possible: it is shown and never stands in the way of saving.
 */
export interface Problem {
  readonly kind?: string
  /** Id of the entry, when there is one. */
  readonly entry?: string
  /** The field, with the part of it that is meant: `azimuth`, `place.along`, `corners[2]`. Empty when it is about the entry as a whole. */
  readonly field: string
  readonly value: unknown
  /** Row of the file it stands in, 1 for the first line. */
  readonly row?: number
  readonly expected: string
  readonly message: string
  readonly warning?: true
}

/** What stood there, as short text: quantities and money as they were written. */
export const written = (value: unknown): string =>
  typeof value === 'object' && value !== null && 'text' in value && typeof value.text === 'string' ? show(value.text) : show(value)

/** A problem whose sentence is made of the label, the value and what would be right. */
export function refuse(field: string, label: string, value: unknown, expected: string, because = ''): Problem {
  const what = value === undefined ? 'nothing is written' : `${written(value)} will not do`
  return { field, value, expected, message: `${label}: ${what}${because === '' ? '' : `, ${because}`}; expected ${expected}.` }
}

/** A doubt, in a whole sentence. */
export const doubt = (field: string, label: string, value: unknown, expected: string, sentence: string): Problem =>
  ({ field, value, expected, message: `${label}: ${sentence}`, warning: true })

export const isError = (problem: Problem): boolean => problem.warning !== true
