import type { GradeStudy, VariogramShown } from '@lodebook/answers'
import { useState } from 'preact/hooks'
import { Figure, rangeText } from '../../drawer/figure.tsx'
import { open, openEntry } from '../../drawer/drawer-state.ts'
import { book } from '../../link/desk.ts'
import { ask } from '../../link/reckoner.ts'
import { crewText, crewUnit, crewValue } from '../../words/crew-value.ts'
import { figures } from '../../words/number.ts'

const wide = 560, high = 260, pad = { left: 48, right: 14, top: 18, bottom: 34 }
const xOf = (share: number) => pad.left + share * (wide - pad.left - pad.right)
const yOf = (share: number) => high - pad.bottom - share * (high - pad.top - pad.bottom)
const path = (points: readonly (readonly [number, number])[]) => points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('')
const frame = `M${pad.left} ${pad.top}V${high - pad.bottom}H${wide - pad.right}`

/** What stands beside the headline; worked out after it, so that the headline does not wait. */
export function StudyParts() {
  const { value } = ask('gradeStudy')
  if (!value) return <p class="waiting" role="status">Working out how far the gold carries…</p>
  if ('notEnough' in value) return null
  return (
    <>
      <section class="section" aria-labelledby="carry">
        <h2 id="carry">How far the gold carries</h2>
        <p class="prose">{value.sentence}</p>
        {value.variogram && <Variogram shown={value.variogram} />}
        {value.leftOut && <LeftOut shown={value.leftOut} />}
      </section>
      {value.topCut && <TopCut shown={value.topCut} />}
      <section class="section" aria-labelledby="averages">
        <h2 id="averages">The same ground by other averages</h2>
        <ul class="inputs">{value.averages.map(a => <li key={a.id}><span>{a.method.name}</span><span><Figure answer={a} /> <span class="soft small">{rangeText(a)}</span></span></li>)}</ul>
        {value.parted.length > 0 && (
          <ul class="plain-list prose">{value.parted.map(p => (
            <li key={p.panel}>{p.sentence} <button type="button" class="fig" onClick={() => openEntry(p.bag.entry)}>Bag {p.bag.bag}</button></li>
          ))}
          </ul>
        )}
      </section>
      <ul class="cautions">{value.cautions.map(c => <li key={c}>{c}</li>)}</ul>
    </>
  )
}

function Variogram({ shown }: { readonly shown: VariogramShown }) {
  const [cloud, setCloud] = useState(false), { units } = book.value!
  const far = shown.curve.at(-1)!.distance, top = (cloud ? Math.max(...shown.cloud.map(c => c.gamma)) : Math.max(...shown.lags.map(l => l.gamma),
    ...shown.curve.map(c => c.high))) * 1.08
  const x = (d: number) => xOf(d / far), y = (g: number) => yOf(Math.min(1, g / top)), put = (m: number) => crewText(m, 'm', units, undefined, true)
  const band = `${path(shown.curve.map(c => [x(c.distance), y(c.high)]))}L${[...shown.curve].reverse().map(c => `${x(c.distance).toFixed(1)} ${y(c.low).toFixed(1)}`).join('L')}Z`
  return (
    <figure>
      <figcaption>
        Half the mean squared difference of two samples, {shown.of}, by how far they are apart; the number of pairs stands at each point
        <button type="button" class="btn quiet" aria-pressed={cloud} onClick={() => setCloud(!cloud)}>{cloud ? 'Show the means' : 'Show the pairs'}</button>
      </figcaption>
      <svg class="chart" viewBox={`0 0 ${wide} ${high}`} role="group" aria-label={`Variogram. ${shown.answer.sentence}`}>
        <path class="axis" d={frame} />
        <text x={wide - pad.right} y={high - 6} text-anchor="end">apart, {crewUnit('m', units)}</text>
        {[0, 0.25, 0.5, 0.75, 1].map(s => <text key={s} x={xOf(s)} y={high - 19} text-anchor={s === 1 ? 'end' : 'middle'}>{s === 0 ? '0' : put(far * s)}</text>)}
        <text x={pad.left - 6} y={pad.top + 4} text-anchor="end">{figures(top, 2)}</text><text x={pad.left - 6} y={yOf(0)} text-anchor="end">0</text>
        <path class="band" d={band} /><path class="curve" d={path(shown.curve.map(c => [x(c.distance), y(c.gamma)]))} />
        {cloud ? shown.cloud.map((c, i) => (
          <circle
            key={i}
            class="pair"
            cx={x(c.distance)}
            cy={y(c.gamma)}
            r={5}
            role="button"
            tabIndex={i === 0 ? 0 : -1}
            aria-label={c.says}
            onClick={() => open({ is: 'several', title: c.says, of: [c.a, c.b].map(b => ({ label: `Bag ${b.bag}`, page: { is: 'entry', id: b.entry } })) })}
          ><title>{c.says}</title>
          </circle>
        )) : shown.lags.map(l => (
          <g key={l.distance}>
            <circle class="dot" cx={x(l.distance)} cy={y(l.gamma)} r={4.5} /><path class="robust" d={`M${x(l.distance) - 5} ${y(l.robust)}h10`} />
            <text x={x(l.distance)} y={y(l.gamma) - 9} text-anchor="middle">{l.pairs}</text>
          </g>
        ))}
      </svg>
      <p class="soft small">Dots: mean of all pairs; bars: a form that one odd pair does not move. The band holds the curves still believable, 8 in 10. <Figure answer={shown.answer} /></p>
      <details class="more">
        <summary>By direction</summary>
        <table>
          <thead><tr><th scope="col">Way</th>{shown.ways[1]!.lags.map((l, i) => <th key={i} scope="col" class="n">{put(l.distance)}</th>)}</tr></thead>
          <tbody>{shown.ways.map(w => <tr key={w.name}><th scope="row">{w.name}</th>{w.lags.map((l, i) => <td key={i} class="n">{figures(l.gamma, 2)} <span class="soft">({l.pairs})</span></td>)}</tr>)}</tbody>
        </table>
      </details>
    </figure>
  )
}

function LeftOut({ shown }: { readonly shown: NonNullable<GradeStudy['leftOut']> }) {
  const logs = shown.points.flatMap(p => [Math.log(p.told), Math.log(p.measured)]), low = Math.min(...logs), span = Math.max(...logs) - low || 1
  const at = (v: number) => (Math.log(v) - low) / span
  return (
    <figure>
      <figcaption>Each sample left out and told from the others: grade × width as told (across) and as measured (up),
        each step a multiple; on the line they agree
      </figcaption>
      <svg class="chart" viewBox={`0 0 ${wide} ${high}`} role="group" aria-label={shown.answer.sentence}>
        <path class="axis" d={frame} /><path class="robust" d={`M${xOf(0)} ${yOf(0)}L${xOf(1)} ${yOf(1)}`} />
        {shown.points.map((p, i) => (
          <circle
            key={p.entry}
            class={Math.abs(p.z) > 1.2816 ? 'pair' : 'dot'}
            cx={xOf(at(p.told))}
            cy={yOf(at(p.measured))}
            r={4.5}
            role="button"
            tabIndex={i === 0 ? 0 : -1}
            aria-label={`Bag ${p.bag}, ${figures(Math.abs(p.z), 2)} standard deviations ${p.z > 0 ? 'richer' : 'leaner'} than told`}
            onClick={() => openEntry(p.entry)}
          ><title>{`Bag ${p.bag}`}</title>
          </circle>
        ))}
      </svg>
      <p class="soft small"><Figure answer={shown.answer}>How well that went</Figure>. Rings: outside their 8-in-10 range.</p>
    </figure>
  )
}

function TopCut({ shown }: { readonly shown: NonNullable<GradeStudy['topCut']> }) {
  const { units } = book.value!, put = (v: number) => crewValue(v, 'g/t', units).value
  const points = shown.points.filter(p => p.grade > 0), logs = points.map(p => Math.log(p.grade)), low = Math.min(...logs), span = Math.max(...logs) - low || 1
  return (
    <section class="section" aria-labelledby="cuts">
      <h2 id="cuts">High values</h2>
      <p class="prose">{shown.sentence}</p>
      <figure>
        <figcaption>Samples by rank (across: standard deviations of a normal law; up: grade, each step a multiple, {crewUnit('g/t', units)}). A straight line is one kind of ore; a break, two</figcaption>
        <svg class="chart" viewBox={`0 0 ${wide} ${high}`} role="group" aria-label="Probability plot of the grades">
          <path class="axis" d={frame} />
          <text x={pad.left - 6} y={pad.top + 4} text-anchor="end">{figures(put(Math.exp(low + span)), 2)}</text><text x={pad.left - 6} y={yOf(0)} text-anchor="end">{figures(put(Math.exp(low)), 2)}</text>
          {[-2, -1, 0, 1, 2].map(z => <text key={z} x={xOf((z + 2.6) / 5.2)} y={high - 16} text-anchor="middle">{z === 0 ? '0' : figures(z, 1)}</text>)}
          {points.map((p, i) => (
            <circle
              key={p.entry}
              class="dot"
              cx={xOf((p.z + 2.6) / 5.2)}
              cy={yOf((Math.log(p.grade) - low) / span)}
              r={4.5}
              role="button"
              tabIndex={i === 0 ? 0 : -1}
              aria-label={`Bag ${p.bag}: ${crewText(p.grade, 'g/t', units)}`}
              onClick={() => openEntry(p.entry)}
            ><title>{`Bag ${p.bag}`}</title>
            </circle>
          ))}
        </svg>
      </figure>
      <div class="scroll-x" tabIndex={0} role="group" aria-labelledby="cuts">
        <table>
          <thead><tr><th scope="col" class="n">Cut at, {crewUnit('g/t', units)}</th><th scope="col" class="n">Values lowered</th><th scope="col" class="n">Plain average, oz</th></tr></thead>
          <tbody>
            <tr><th scope="row" class="n">uncut</th><td class="n">0</td><td class="n"><Figure answer={shown.uncut} /></td></tr>
            {shown.cuts.map(c => <tr key={c.cut}><th scope="row" class="n">{crewText(c.cut, 'g/t', units, undefined, true)}</th><td class="n">{c.values}</td><td class="n"><Figure answer={c.answer} /></td></tr>)}
          </tbody>
        </table>
      </div>
    </section>
  )
}
