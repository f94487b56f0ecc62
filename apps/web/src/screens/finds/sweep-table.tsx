import type { Finds } from '@lodebook/answers'
import { openEntry } from '../../drawer/drawer-state.ts'
import { book } from '../../link/desk.ts'
import { crewText } from '../../words/crew-value.ts'
import { dayText } from '../../words/moment.ts'
import { counted } from '../../words/number.ts'

/** Every stretch that was gone over: what was heard, with what, by whom. */
export function SweepTable({ finds }: { readonly finds: Finds }) {
  const { units } = book.value!
  if (finds.sweeps.length === 0) return null
  return (
    <details class="section more">
      <summary>{counted(finds.sweeps.length, 'stretch', 'stretches')} gone over with the detector</summary>
      <div class="scroll-x" tabIndex={0} role="group" aria-label="Sweeps">
        <table>
          <thead><tr><th scope="col">Stretch</th><th scope="col" class="n">Long</th><th scope="col">Heard</th><th scope="col">With</th><th scope="col">By</th></tr></thead>
          <tbody>{finds.sweeps.map(s => (
            <tr key={s.entry}>
              <th scope="row"><button type="button" class="fig" onClick={() => openEntry(s.entry)}>{s.says}</button></th>
              <td class="n">{s.length === undefined ? 'not placed' : crewText(s.length, 'm', units)}</td>
              <td>{s.result === 'marks found' ? s.marks.join(', ') || 'marks found' : s.result}</td><td>{s.with}</td><td>{s.by}, {dayText(s.when)}</td>
            </tr>
          ))}
          </tbody>
        </table>
      </div>
    </details>
  )
}
