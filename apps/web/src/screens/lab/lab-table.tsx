import type { LabSample } from '@lodebook/answers'
import { useState } from 'preact/hooks'
import { openAnswer, openEntry } from '../../drawer/drawer-state.ts'
import { book } from '../../link/desk.ts'
import { crewUnit, crewValue } from '../../words/crew-value.ts'
import { counted, figures } from '../../words/number.ts'

const atFirst = 15

/** Every bag with each look at it and the one belief that they make together, the richest first. */
export function LabTable({ samples }: { readonly samples: readonly LabSample[] }) {
  const [all, setAll] = useState(false), { units } = book.value!, grade = (v: number) => figures(crewValue(v, 'g/t', units).value, 2)
  const shown = all ? samples : samples.slice(0, atFirst)
  return (
    <section class="section" aria-labelledby="bags">
      <h2 id="bags">What each bag ran, all looks together</h2>
      <div class="scroll-x" tabIndex={0} role="group" aria-labelledby="bags">
        <table class="lab-table">
          <thead><tr><th scope="col">Bag</th><th scope="col" class="n">Gold, {crewUnit('g/t', units)}</th><th scope="col" class="n">8 in 10</th><th scope="col">Pans</th><th scope="col">Assays</th><th scope="col">Remark</th></tr></thead>
          <tbody>{shown.map(s => (
            <tr key={s.bag}>
              <th scope="row"><button type="button" class="fig" onClick={() => openAnswer(s.answer)}>{s.bag}</button></th>
              <td class="n"><b>{s.below ? `< ${grade(s.high)}` : grade(s.grade)}</b></td><td class="n">{grade(s.low)} to {grade(s.high)}</td>
              <td><Looks sample={s} kind="pan" grade={grade} /></td><td><Looks sample={s} kind="assay" grade={grade} /></td>
              <td>{[...s.doubts, ...(s.role === 'duplicate' ? [`doubles ${s.doubles[0]!}`] : s.doubles.length > 0 ? [`doubled by ${s.doubles.join(', ')}`] : []), ...(['channel', 'chip', ''].includes(s.method) ? [] : [s.method])].join('; ')}</td>
            </tr>
          ))}
          </tbody>
        </table>
      </div>
      {!all && samples.length > atFirst && <p><button type="button" class="btn" onClick={() => setAll(true)}>Show all {counted(samples.length, 'bag')}</button></p>}
    </section>
  )
}

const Looks = ({ sample, kind, grade }: { readonly sample: LabSample, readonly kind: 'pan' | 'assay', readonly grade: (v: number) => string }) => (
  <>{sample.looks.filter(l => l.kind === kind).map((l, i) => (
    <span key={l.entry}>{i > 0 && ', '}<button type="button" class="fig" title={l.says} onClick={() => openEntry(l.entry)}>{l.mark === 'below' ? '< ' : l.mark === 'above' ? '> ' : ''}{grade(l.grade)}</button></span>
  ))}
  </>
)
