import type { Panel } from '@lodebook/answers'
import { useState } from 'preact/hooks'
import { openAnswer } from '../../drawer/drawer-state.ts'
import { book } from '../../link/desk.ts'
import { crewText, crewUnit, crewValue } from '../../words/crew-value.ts'
import { counted, figures } from '../../words/number.ts'

const atFirst = 12

/** The panels as a table, the most gold first. */
export function PanelTable({ panels }: { readonly panels: readonly Panel[] }) {
  const [all, setAll] = useState(false), { units } = book.value!
  const sorted = [...panels].sort((a, b) => b.ounces - a.ounces), shown = all ? sorted : sorted.slice(0, atFirst)
  return (
    <section class="section" aria-labelledby="panels">
      <h2 id="panels">Panels, the most gold first</h2>
      <div class="scroll-x" tabIndex={0} role="group" aria-labelledby="panels">
        <table>
          <thead>
            <tr>
              <th scope="col">Panel</th><th scope="col" class="n">Gold, oz</th><th scope="col" class="n">8 in 10, oz</th><th scope="col" class="n">Rock, {crewUnit('t', units)}</th>
              <th scope="col" class="n">Grade, {crewUnit('g/t', units)}</th><th scope="col" class="n">Width, {crewUnit('m', units)}</th><th scope="col" class="n">Doubt, %</th><th scope="col" class="n">Nearest sample</th>
            </tr>
          </thead>
          <tbody>{shown.map(p => (
            <tr key={p.name}>
              <th scope="row"><button type="button" class="fig" onClick={() => openAnswer(p.answer)}>{p.name}</button></th>
              <td class="n">{figures(p.ounces, 2)}</td><td class="n">{figures(p.low, 2)} to {figures(p.high, 2)}</td><td class="n">{figures(crewValue(p.tonnes, 't', units).value, 3)}</td>
              <td class="n">{figures(crewValue(p.grade, 'g/t', units).value, 2)}</td><td class="n">{figures(crewValue(p.width, 'm', units).value, 2)}</td>
              <td class="n">{figures(p.doubt * 100, 2)}</td><td class="n">{crewText(p.nearest, 'm', units)}</td>
            </tr>
          ))}
          </tbody>
        </table>
      </div>
      {!all && sorted.length > atFirst && <p><button type="button" class="btn" onClick={() => setAll(true)}>Show all {counted(sorted.length, 'panel')}</button></p>}
    </section>
  )
}
