import { useId } from 'preact/hooks'

/** One of a few words; a tap on the chosen one takes it back. */
export function ChoiceChips({ of, value, onTake }: { readonly of: readonly string[], readonly value: string, readonly onTake: (text: string) => void }) {
  const name = useId()
  return (
    <div class="choices">
      {of.map(word => (
        <label class="choice" key={word}>
          <input type="radio" name={name} value={word} checked={word === value} onChange={() => onTake(word)} onClick={() => { if (word === value) onTake('') }} />
          <span>{word}</span>
        </label>
      ))}
    </div>
  )
}
