import type { Answer, AnswerRange } from '@lodebook/answers'
import { stepFor } from '@lodebook/answers'
import type { ComponentChildren } from 'preact'
import { book } from '../link/desk.ts'
import { crewText, crewValue } from '../words/crew-value.ts'
import { outOf } from '../words/number.ts'
import { openAnswer } from './drawer-state.ts'

/** A figure that opens down to the entries it came from. Its text is the value with its unit unless another is given. */
export function Figure({ answer, children, onOpen = openAnswer }: {
  readonly answer: Answer<unknown>
  readonly children?: ComponentChildren
  readonly onOpen?: (answer: Answer<unknown>) => void
}) {
  return (
    <button type="button" class="fig" aria-haspopup="dialog" onClick={() => onOpen(answer)}>
      {children ?? valueText(answer)}
    </button>
  )
}

/** An answer's value in short: a number with its unit and no more figures than its range bears out, a word, or 'open' for what has no short form. */
export function valueText({ value, unit, range }: Answer<unknown>): string {
  if (typeof value === 'number') return crewText(value, unit, units(), range && stepOf(range, unit))
  return typeof value === 'string' ? value : 'open'
}

/** '130 to 170 oz, 8 in 10'; '' when there is no range. */
export function rangeText({ range, unit }: Answer<unknown>): string {
  if (!range) return ''
  const step = stepOf(range, unit), low = crewText(range.low, unit, units(), step, true), high = crewText(range.high, unit, units(), step)
  return `${low} to ${high}, ${outOf(range.confidence, Number.isInteger(Math.round(range.confidence * 100) / 10) ? 10 : 20)}`
}

const units = () => book.value?.units ?? 'metres and g/t'

const isMoney = (unit: string | undefined): boolean => /^[A-Z]{3}\b/.test(unit ?? '')

/** The last figure worth printing in the crew's unit, by the rule that sentences follow too. */
function stepOf(range: AnswerRange, unit: string | undefined): number | undefined {
  const [low, high] = unit === undefined ? [range.low, range.high] : [crewValue(range.low, unit, units()).value, crewValue(range.high, unit, units()).value]
  return stepFor(low, high, isMoney(unit))
}
