import type { Dimension } from '@lodebook/reckon/units'
import { bigKeys, keysFor, typingInto } from './keypad-state.ts'
import { describedBy } from './field-frame.tsx'

export interface BoxProps {
  readonly id: string
  readonly label: string
  readonly hint: string | undefined
  readonly echo: string
  readonly problem: string
  readonly value: string
  readonly onText: (text: string) => void
}

/** One line of text, with the phone's own keyboard. */
export const TextBox = ({ id, value, onText, hint, echo, problem, list }: BoxProps & { readonly list?: readonly string[] }) => (
  <>
    <input
      id={id}
      type="text"
      class="box"
      value={value}
      autocomplete="off"
      autocapitalize="off"
      spellcheck={false}
      list={list && list.length > 0 ? `${id}-list` : undefined}
      aria-invalid={problem !== ''}
      aria-describedby={describedBy(id, hint, echo, problem)}
      onInput={e => onText(e.currentTarget.value)}
    />
    {list && list.length > 0 && <datalist id={`${id}-list`}>{list.map(w => <option key={w} value={w} />)}</datalist>}
  </>
)

/** A figure with its unit: big keys on a touch screen, any keyboard elsewhere. */
export const FigureBox = ({ id, label, value, onText, hint, echo, problem, dimension }: BoxProps & { readonly dimension?: Dimension | undefined }) => (
  <input
    id={id}
    type="text"
    class="box figure-box"
    value={value}
    autocomplete="off"
    spellcheck={false}
    inputMode={bigKeys.value ? 'none' : dimension === undefined ? 'decimal' : 'text'}
    aria-invalid={problem !== ''}
    aria-describedby={describedBy(id, hint, echo, problem)}
    onInput={e => onText(e.currentTarget.value)}
    onFocus={(e) => {
      const input = e.currentTarget
      if (bigKeys.peek()) {
        typingInto.value = { input, label, keys: keysFor(dimension) }
        requestAnimationFrame(() => input.scrollIntoView({ block: 'center' }))
      }
    }}
    onBlur={() => { typingInto.value = undefined }}
  />
)
