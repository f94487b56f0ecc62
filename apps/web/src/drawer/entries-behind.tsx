import { useEffect, useState } from 'preact/hooks'
import type { EntryLine } from '../bookkeeper/desk.ts'
import { desk } from '../link/desk.ts'
import { counted } from '../words/number.ts'
import { dayText } from '../words/moment.ts'
import { deeper } from './drawer-state.ts'

const atFirst = 12

/** The entries that a figure rests on, each with who and when, each to be opened. */
export function EntriesBehind({ ids }: { readonly ids: readonly string[] }) {
  const [lines, setLines] = useState<readonly EntryLine[]>(), [all, setAll] = useState(false)
  useEffect(() => {
    let current = true
    void desk.entries([...ids]).then((found) => { if (current) setLines(found) })
    return () => { current = false }
  }, [ids])
  if (!lines) return <p class="waiting">Looking them up…</p>
  const shown = all ? lines : lines.slice(0, atFirst)
  return (
    <>
      <ul class="entries-behind">
        {shown.map(({ entry, title }) => (
          <li key={entry.id}>
            <button type="button" class="fig" onClick={() => deeper({ is: 'entry', id: entry.id })}>{title}</button>
            <span class="soft small">{entry.createdBy}, {dayText(entry.createdAt)}{entry.struck ? ', struck out' : ''}</span>
          </li>
        ))}
      </ul>
      {shown.length < lines.length && <button type="button" class="btn" onClick={() => setAll(true)}>Show all {counted(lines.length, 'entry', 'entries')}</button>}
    </>
  )
}
