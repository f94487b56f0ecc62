import type { Answer, StationAt } from '@lodebook/answers'
import { decimal } from '../../words/number.ts'

/** The stations as a list of coordinates: what the sheet draws, for those who would rather read it. */
export function StationTable({ stations, onOpen }: { readonly stations: readonly StationAt[], readonly onOpen: (answer: Answer<unknown>) => void }) {
  return (
    <details class="section more">
      <summary>Stations and their coordinates</summary>
      <div class="scroll-x" tabIndex={0} role="group" aria-label="Stations and their coordinates">
        <table>
          <caption class="off-screen">Stations: metres in the book’s grid; good to is the longer half-axis of the 95 in 100 ellipse in plan</caption>
          <thead><tr><th scope="col">Station</th><th scope="col" class="n">East, m</th><th scope="col" class="n">North, m</th><th scope="col" class="n">Elevation, m</th><th scope="col" class="n">Good to, m</th></tr></thead>
          <tbody>{stations.map(s => (
            <tr key={s.name}>
              <th scope="row"><button type="button" class="fig" onClick={() => onOpen(s.answer)}>{s.name}</button></th>
              {s.point.map((v, i) => <td key={i} class="n">{decimal(v, 2)}</td>)}
              <td class="n">{decimal(s.ellipse.major, 2)}</td>
            </tr>
          ))}
          </tbody>
        </table>
      </div>
    </details>
  )
}
