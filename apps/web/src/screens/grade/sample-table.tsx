import type { SampleAt } from '@lodebook/answers'
import { openAnswer } from '../../drawer/drawer-state.ts'
import { book } from '../../link/desk.ts'
import { crewUnit, crewValue } from '../../words/crew-value.ts'
import { counted, figures } from '../../words/number.ts'

/** The samples as the crew may believe them, the richest first, with those left aside and why. */
export function SampleTable({ samples }: { readonly samples: readonly SampleAt[] }) {
  const { units } = book.value!, grade = (v: number) => figures(crewValue(v, 'g/t', units).value, 2)
  const used = [...samples].filter(s => s.used).sort((a, b) => b.grade - a.grade), aside = samples.filter(s => !s.used)
  return (
    <details class="section more">
      <summary>{counted(used.length, 'sample')} behind this{aside.length > 0 && `, ${aside.length} left aside`}</summary>
      <div class="scroll-x" tabIndex={0} role="group" aria-label="Samples">
        <table>
          <thead><tr><th scope="col">Bag</th><th scope="col" class="n">Gold, {crewUnit('g/t', units)}</th><th scope="col" class="n">8 in 10</th><th scope="col" class="n">True width, {crewUnit('m', units)}</th><th scope="col">Remark</th></tr></thead>
          <tbody>{[...used, ...aside].map(s => (
            <tr key={s.entry}>
              <th scope="row"><button type="button" class="fig" onClick={() => openAnswer(s.answer)}>{s.bag}</button></th>
              <td class="n">{s.below ? '< ' : ''}{grade(s.grade)}</td><td class="n">{grade(s.low)} to {grade(s.high)}</td>
              <td class="n">{s.width === undefined ? '' : figures(crewValue(s.width, 'm', units).value, 2)}</td><td>{s.used ? '' : s.why}</td>
            </tr>
          ))}
          </tbody>
        </table>
      </div>
    </details>
  )
}
