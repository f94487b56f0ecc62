import { useId } from 'preact/hooks'

/** A row of words of which one is chosen. */
export function ChoiceRow<T extends string>({ label, of, value, onChoose, show = false, say = String }: {
  readonly label: string
  readonly of: readonly T[]
  readonly value: T | undefined
  readonly onChoose: (value: T) => void
  /** Whether the label is to be seen as well as heard. */
  readonly show?: boolean
  readonly say?: (value: T) => string
}) {
  const name = useId()
  return (
    <fieldset>
      <legend class={show ? 'label' : 'off-screen'}>{label}</legend>
      <div class="choices">
        {of.map(v => (
          <label class="choice" key={v}>
            <input type="radio" name={name} value={v} checked={v === value} onChange={() => onChoose(v)} />
            <span>{say(v)}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}
