import type { Association, Associations } from '@lodebook/answers'
import { openAnswer } from '../../drawer/drawer-state.ts'
import { ask } from '../../link/reckoner.ts'
import { Answered } from '../../shell/answered.tsx'
import { figures } from '../../words/number.ts'

/** What goes with gold: effect, range and count of everything asked, on one scale. */
export function WithGoldPage() {
  return <Answered asks="What goes with gold?" asked={ask('associations')}>{associations => <Shown associations={associations} />}</Answered>
}

const Shown = ({ associations }: { readonly associations: Associations }) => (
  <>
    <h1 class="sentence">{associations.sentence}</h1>
    <section class="section" aria-labelledby="all-asked">
      <h2 id="all-asked">Everything that was asked of {associations.bags} bags</h2>
      <ul class="asked-list">{associations.of.map(a => <OneAsked key={a.name} a={a} />)}</ul>
    </section>
    <ul class="cautions">{associations.cautions.map(c => <li key={c}>{c}</li>)}</ul>
  </>
)

const ticks = [1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8] as const
const wide = 420, high = 46
/** Where a ratio stands on the axis of doublings, which ends at an eighth and at eight times. */
const xOf = (ratio: number): number => wide / 2 + Math.max(-3.3, Math.min(3.3, Math.log2(ratio))) * (wide / 2 - 24) / 3.3
const tickText = (t: number): string => t < 1 ? `1/${Math.round(1 / t)}` : `${t}`

function OneAsked({ a }: { readonly a: Association }) {
  const { ratio, low, high: most } = a
  return (
    <li>
      <div>
        <p><b>{a.asks}</b> <span class={a.says === 'more gold' || a.says === 'less gold' ? 'verdict' : 'soft'}>{a.says}</span></p>
        <p>{ratio ? <button type="button" class="fig" onClick={() => openAnswer(ratio)}>{a.sentence}</button> : a.sentence}</p>
      </div>
      {(ratio !== undefined || low > 0 || Number.isFinite(most)) && (
        <svg viewBox={`0 0 ${wide} ${high}`} role="img" aria-label={`${ratio ? figures(ratio.value, 2) : 'not known'} times as much gold, 8 in 10 between ${low === 0 ? 'any' : figures(low, 2)} and ${Number.isFinite(most) ? figures(most, 2) : 'any'}`}>
          <path class="even" d={`M${xOf(1)} 2V${high - 16}`} />
          {ticks.map(t => <g key={t}><path class="axis" d={`M${xOf(t)} ${high - 20}v5`} /><text x={xOf(t)} y={high - 3} text-anchor="middle">{tickText(t)}</text></g>)}
          <path class="axis" d={`M${xOf(1 / 9.8)} ${high - 20}H${xOf(9.8)}`} />
          <path class="span" d={`M${xOf(low || 1e-9)} 13H${xOf(Number.isFinite(most) ? most : 1e9)}`} />
          {ratio && <circle cx={xOf(ratio.value)} cy={13} r={6} class="dot" />}
        </svg>
      )}
    </li>
  )
}
