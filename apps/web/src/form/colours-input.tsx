import type { Colour } from '@lodebook/book'
import { coloursText, readColours } from '@lodebook/book/input'
import { book } from '../link/desk.ts'
import { linkTo } from '../shell/route.ts'

/**
 * Size classes to start from. What one grain weighs is one troy ounce over the number of colours that make it: fine 12,000, very fine 40,000,
 * flour 300,000 (the classes of a state survey's placer handbook; checks/grade-and-pay.md, 2.6). A crew that has weighed
 * its own writes down a size of colours for each; then those stand here instead.
 */
const usual: readonly Colour[] = [{ class: 'fine', count: 0, mgEach: 2.6 }, { class: 'very fine', count: 0, mgEach: 0.78 }, { class: 'flour', count: 0, mgEach: 0.1 }]

/** Gold counted in a pan: a tap for every grain seen. */
export function ColoursInput({ id, text, onText }: { readonly id: string, readonly text: string, readonly onText: (text: string) => void }) {
  const own = Object.entries(book.value?.colourMg ?? {}).map(([name, mgEach]): Colour => ({ class: name, count: 0, mgEach }))
  const classes = own.length > 0 ? own.sort((a, b) => b.mgEach - a.mgEach) : usual
  const read = text.trim() === '' ? undefined : readColours(text, book.value?.colourMg)
  const kept = read?.ok ? read.value : []
  const rows = [...classes.map(u => kept.find(c => c.class === u.class) ?? u), ...kept.filter(c => !classes.some(u => u.class === c.class))]
  const count = (which: Colour, by: number) => {
    const next = rows.map(c => c.class === which.class ? { ...c, count: Math.max(0, c.count + by) } : c).filter(c => c.count > 0)
    onText(coloursText(next))
  }
  return (
    <>
      <ul class="colours">
        {rows.map(c => (
          <li key={c.class}>
            <span>{c.class} <span class="soft small">{c.mgEach} mg each</span></span>
            <button type="button" class="btn" aria-label={`One ${c.class} grain fewer`} onClick={() => count(c, -1)}>−</button>
            <b class="n">{c.count}</b>
            <button type="button" class="btn" aria-label={`One ${c.class} grain more`} onClick={() => count(c, 1)}>+</button>
          </li>
        ))}
      </ul>
      {own.length === 0 && <p class="small soft"><a href={linkTo('write', 'colour-class')}>Write down your own sizes and what a grain of each weighs</a></p>}
      <label class="small soft" for={`${id}-text`}>or as text, such as 12 fine at 0.05 mg; none</label>
      <input id={`${id}-text`} type="text" class="box" value={text} onInput={e => onText(e.currentTarget.value)} />
    </>
  )
}
