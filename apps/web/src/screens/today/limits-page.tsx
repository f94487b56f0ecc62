import type { Today } from '@lodebook/answers'
import { openEntry } from '../../drawer/drawer-state.ts'
import { linkTo } from '../../shell/route.ts'

/** The limits in force: every row with its rule, its section and how well the figure is known. */
export function LimitsPage({ today }: { readonly today: Today }) {
  const { limits, profile } = today.air, substances = [...new Set(limits.map(l => l.substance))]
  return (
    <>
      <h1 class="sentence">Readings are held against {limits.length} limits: {profile === 'all in the table' ? 'all in the table' : `those for ${profile}`}, and {limits.some(l => l.entry) ? 'the crew’s own' : 'none of the crew’s own'}.</h1>
      <p class="prose">Check local law; licensed people decide. Explosive, immediately dangerous and disabling values stay whatever is chosen or written.</p>
      <p class="row row-start"><a class="btn" href={linkTo('book', 'mine')}>Choose whose limits, in the mine’s entry</a><a class="btn" href={linkTo('write', 'limit')}>Write a limit of our own</a></p>
      {substances.map(s => (
        <section class="section" key={s} aria-label={s}>
          <h2>{s.replace(/^./, c => c.toUpperCase())}</h2>
          <div class="scroll-x" tabIndex={0} role="group" aria-label={`Limits for ${s}`}>
            <table>
              <thead><tr><th scope="col">Outside is</th><th scope="col">Sort</th><th scope="col">Rule and section</th><th scope="col">What it says</th><th scope="col">Figure</th></tr></thead>
              <tbody>{limits.filter(l => l.substance === s).map(l => (
                <tr key={`${l.kind}${l.text}${l.section}${l.rule}`}><td class="nowrap">{l.text}</td><td>{l.kind}</td><td>{l.entry === undefined ? <>{l.rule}, {l.section}</> : <button type="button" class="fig" onClick={() => openEntry(l.entry!)}>{l.rule}, {l.section}</button>}</td><td>{l.says}</td><td class="small">{l.status}<br /><span class="soft">{l.source}</span></td></tr>
              ))}
              </tbody>
            </table>
          </div>
        </section>
      ))}
    </>
  )
}
