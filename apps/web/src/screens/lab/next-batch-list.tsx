import type { NextBatch } from '@lodebook/answers'
import { useState } from 'preact/hooks'
import { counted } from '../../words/number.ts'

const atFirst = 12

/** The next batch in the order in which it should be run, with blanks, standards and second splits where they tell most. */
export function NextBatchList({ batch: { places, sentence } }: { readonly batch: NextBatch }) {
  const [all, setAll] = useState(false), shown = all ? places : places.slice(0, atFirst)
  return (
    <section class="section" aria-labelledby="next-batch">
      <h2 id="next-batch">The next batch</h2>
      <p class="prose">{sentence}</p>
      {places.length > 0 && (
        <ol class="batch">{shown.map((p, i) => <li key={i} class={p.what === 'bag' ? undefined : 'control'}><span>{p.name}</span>{p.why && <span class="soft small">{p.why}</span>}</li>)}</ol>
      )}
      {!all && places.length > atFirst && <p><button type="button" class="btn" onClick={() => setAll(true)}>Show all {counted(places.length, 'place')}</button></p>}
    </section>
  )
}
