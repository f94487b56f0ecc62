import type { Finds } from '@lodebook/answers'
import { useState } from 'preact/hooks'
import { ChoiceRow } from '../../shell/choice-row.tsx'
import { linkTo } from '../../shell/route.ts'
import { inTape } from '../../words/in-tape.ts'
import { counted } from '../../words/number.ts'

const orders = ['nearest first', 'strongest first'] as const
const atFirst = 12

/** Targets that are still to be followed up, as one would walk to them; each leads to its story. */
export function OpenTargets({ finds }: { readonly finds: Finds }) {
  const [all, setAll] = useState(false), [order, setOrder] = useState<typeof orders[number]>('nearest first')
  const nearest = finds.open.map(id => ({ story: finds.targets.find(t => t.entry === id)!, find: finds.finds.find(f => f.entry === id)! }))
  const sorted = order === 'nearest first' ? nearest : [...nearest].sort((a, b) => (b.story.strength ?? -1) - (a.story.strength ?? -1))
  const shown = all ? sorted : sorted.slice(0, atFirst), ended = finds.targets.filter(t => !t.open)
  return (
    <section class="section" aria-labelledby="open-targets">
      <h2 id="open-targets">Still to be followed up</h2>
      {nearest.length === 0 ? <p class="soft">Every signal that is written has been followed to its end.</p> : (
        <>
          <ChoiceRow label="Order" of={orders} value={order} onChoose={setOrder} />
          <ol class="walk">
            {shown.map(({ story, find }) => (
              <li key={story.entry}>
                <a href={linkTo('finds', 'at', story.entry)}>
                  <b>{story.mark || 'no mark'}</b>
                  <span class="n">{find.way === undefined ? '' : inTape(find.way)}<small>{find.way === undefined ? 'not placed' : ` from ${finds.portal}`}</small></span>
                  <span>{find.where}</span>
                  <span class="soft">{[story.state, story.strength === undefined ? '' : `heard ${story.strength} of 10`, story.character].filter(Boolean).join(', ')}</span>
                </a>
              </li>
            ))}
          </ol>
          {shown.length < sorted.length && <p><button type="button" class="btn" onClick={() => setAll(true)}>Show all {counted(sorted.length, 'target')}</button></p>}
        </>
      )}
      {ended.length > 0 && (
        <details class="more">
          <summary>{counted(ended.length, 'target')} followed to the end</summary>
          <ul class="chips ended">{ended.map(t => <li key={t.entry}><a class="btn" href={linkTo('finds', 'at', t.entry)}><b>{t.mark}</b> {t.state}</a></li>)}</ul>
        </details>
      )}
    </section>
  )
}
