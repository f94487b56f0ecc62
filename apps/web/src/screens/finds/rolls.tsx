import type { RollUse } from '@lodebook/answers'
import { openEntry } from '../../drawer/drawer-state.ts'
import { linkTo } from '../../shell/route.ts'
import { PrintLabels } from './print-labels.tsx'
import { counted } from '../../words/number.ts'

/** Rolls of labels: how far each is used, what comes next. */
export function Rolls({ rolls }: { readonly rolls: readonly RollUse[] }) {
  return (
    <section class="section" aria-labelledby="rolls">
      <h2 id="rolls">Labels</h2>
      {rolls.length === 0 && <p class="prose">No roll of labels is written. With printed numbers no bag is numbered twice, and a missing one shows.</p>}
      {rolls.length > 0 && (
        <div class="scroll-x" tabIndex={0} role="group" aria-labelledby="rolls">
          <table class="rolls">
            <thead><tr><th scope="col">Roll</th><th scope="col" class="n">Used</th><th scope="col" class="n">Left</th><th scope="col">Next</th><th scope="col">Passed over</th></tr></thead>
            <tbody>{rolls.map(r => (
              <tr key={r.name}>
                <th scope="row">{r.entry === '' ? r.name : <button type="button" class="fig" onClick={() => openEntry(r.entry)}>{r.name}</button>}</th>
                <td class="n">{r.used}</td><td class="n">{r.entry === '' ? 'no roll' : r.left}</td>
                <td>{r.next === '' ? '' : <a href={linkTo('write', 'sample', 'with', 'bag', r.next)}>{r.next}</a>}</td>
                <td>{r.skipped.length === 0 ? '' : r.skipped.length <= 3 ? r.skipped.join(', ') : counted(r.skipped.length, 'number')}</td>
              </tr>
            ))}
            </tbody>
          </table>
        </div>
      )}
      {rolls.filter(r => r.entry !== '').slice(-1).map(r => <PrintLabels key={r.entry} roll={r.entry} />)}
      <p class="row begin"><a class="btn" href={linkTo('write', 'label-roll')}>Write a roll of labels</a></p>
    </section>
  )
}
