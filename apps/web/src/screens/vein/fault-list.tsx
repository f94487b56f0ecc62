import type { VeinSheet } from '@lodebook/answers'
import { Figure } from '../../drawer/figure.tsx'
import { NotEnoughShown } from '../../words/not-enough.tsx'

/** Every fault that was read: how it lies, its grooves, its sense and what fills it. */
export function FaultList({ sheet }: { readonly sheet: VeinSheet }) {
  return (
    <section class="section" aria-labelledby="faults">
      <h2 id="faults">Faults</h2>
      {sheet.faults.length === 0 && <NotEnoughShown answer={{ notEnough: true, sentence: 'No fault has been read yet.', wanted: [{ kind: 'structure', why: 'strike and dip of the break where the vein ends, with its grooves and its sense, tell where it went' }], cautions: [] }} />}
      {sheet.faults.map(f => (
        <div key={f.name} class="fault-said">
          <h3>{f.name}{f.cuts ? '' : ', left out of the reckoning'}</h3>
          <ul class="said">
            <li><Figure answer={f.strike}>{f.strike.sentence}</Figure> <Figure answer={f.dip}>{f.dip.sentence}</Figure></li>
            <li>{f.grooves ? <Figure answer={f.grooves}>{f.grooves.sentence}</Figure> : <span class="soft">No grooves read on it.</span>}</li>
            <li>{f.sense ? <Figure answer={f.sense}>{f.sense.sentence}</Figure> : <span class="soft">No sense of movement read on it.</span>}</li>
            {f.infill.length > 0 && <li class="soft">Filled with {f.infill.join(', ')}.</li>}
          </ul>
        </div>
      ))}
    </section>
  )
}
