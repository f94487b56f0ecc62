import { takeBack, type, typingInto, useBigKeys } from './keypad-state.ts'

const rows = [['7', '8', '9'], ['4', '5', '6'], ['1', '2', '3'], ['.', '0']]

/** Big keys for a gloved thumb: figures, and only the marks and units that the field can use. */
export function Keypad() {
  const into = typingInto.value
  if (!into) return null
  // The field must keep the focus while keys are pressed.
  const press = (key: string) => (event: PointerEvent) => { event.preventDefault(); type(into.input, key) }
  const next = (event: PointerEvent) => {
    event.preventDefault()
    const fields = [...into.input.form!.querySelectorAll<HTMLElement>('input:not([type=hidden]), textarea, select, button')]
      .filter(f => f.offsetParent !== null && (f === into.input || f.matches('input[type=text], input:not([type]), textarea')))
    const after = fields[fields.indexOf(into.input) + 1]
    if (after) after.focus(); else into.input.blur()
  }
  const done = (event: PointerEvent) => { event.preventDefault(); into.input.blur() }
  const ownKeyboard = (event: PointerEvent) => {
    event.preventDefault()
    const { input } = into
    useBigKeys(false)
    input.blur()
    requestAnimationFrame(() => { input.focus() })
  }
  return (
    <div class="keypad" role="group" aria-label={`Keys for ${into.label}`} onPointerDown={e => e.preventDefault()}>
      <div class="keypad-marks">{into.keys.map(k => <button type="button" tabIndex={-1} key={k} onPointerDown={press(k)}>{k}</button>)}</div>
      <div class="keypad-figures">
        <div class="keypad-digits">
          {rows.flatMap(row => row.map(k => <button type="button" tabIndex={-1} key={k} onPointerDown={press(k)}>{k}</button>))}
          <button type="button" tabIndex={-1} class="word" onPointerDown={ownKeyboard}>abc</button>
        </div>
        <div class="keypad-side">
          <button type="button" tabIndex={-1} aria-label="Take back" onPointerDown={press(takeBack)}>{takeBack}</button>
          <button type="button" tabIndex={-1} class="word" onPointerDown={press(' ')}>space</button>
          <button type="button" tabIndex={-1} class="word strong" onPointerDown={next}>next</button>
          <button type="button" tabIndex={-1} class="word" onPointerDown={done}>done</button>
        </div>
      </div>
    </div>
  )
}
