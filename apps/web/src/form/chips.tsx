/** Words that can be put into a field with one tap instead of being typed. */
export function Chips({ of, value, label, onTake, many = false }: {
  readonly of: readonly string[]
  readonly value: string
  readonly label: string
  readonly onTake: (text: string) => void
  /** The field holds several, parted by commas: a tap puts one in or takes it out. */
  readonly many?: boolean
}) {
  const held = many ? value.split(',').map(w => w.trim()).filter(Boolean) : [value.trim()]
  const take = (word: string) => {
    if (!many) onTake(held[0] === word ? '' : word)
    else onTake((held.includes(word) ? held.filter(w => w !== word) : [...held, word]).join(', '))
  }
  if (of.length === 0) return null
  return (
    <div class="chips" role="group" aria-label={label}>
      {of.map(word => <button type="button" key={word} class="chip" aria-pressed={held.includes(word)} onClick={() => take(word)}>{word}</button>)}
    </div>
  )
}
