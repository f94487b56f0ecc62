import type { Answer } from '@lodebook/answers'
import type { ComponentChildren } from 'preact'
import { book } from '../link/desk.ts'
import { crewText } from '../words/crew-value.ts'
import { outOf } from '../words/number.ts'
import { openAnswer } from './drawer-state.ts'

/** A figure that opens down to the entries it came from. Its text is the value with its unit unless another is given. */
export function Figure({ answer, children, onOpen = openAnswer }: {
  readonly answer: Answer<unknown>, readonly children?: ComponentChildren, readonly onOpen?: (answer: Answer<unknown>) => void
}) {
  return (
    <button type="button" class="fig" aria-haspopup="dialog" onClick={() => onOpen(answer)}>
      {children ?? valueText(answer)}
    </button>
  )
}

/** An answer's value in short: a number with its unit, a word, or 'open' for what has no short form. */
export function valueText({ value, unit }: Answer<unknown>): string {
  if (typeof value === 'number') return crewText(value, unit, book.value?.units ?? 'metres and g/t')
  return typeof value === 'string' ? value : 'open'
}

/** '21 to 98 oz, 8 in 10'; '' when there is no range. */
export function rangeText({ range, unit }: Answer<unknown>): string {
  if (!range) return ''
  const units = book.value?.units ?? 'metres and g/t'
  return `${crewText(range.low, unit, units)} to ${crewText(range.high, unit, units)}, ${outOf(range.confidence, Number.isInteger(Math.round(range.confidence * 100) / 10) ? 10 : 20)}`
}
