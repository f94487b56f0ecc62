import type { NotEnough, PansAgainstAssays } from '@lodebook/answers'
import { logRoom } from '../../drawing/axis.ts'
import { Chart, lineThrough } from '../../drawing/chart.tsx'
import type { ChartPoint } from '../../drawing/chart.tsx'
import { Figure, rangeText } from '../../drawer/figure.tsx'
import { book } from '../../link/desk.ts'
import { NotEnoughShown } from '../../words/not-enough.tsx'
import { crewText, crewUnit, crewValue } from '../../words/crew-value.ts'
import { figures } from '../../words/number.ts'

/** Pans against assays of the same bags on logs: what pans keep, whether it is the same for all grades, and what would tell it better. */
export function PansShown({ pans }: { readonly pans: PansAgainstAssays | NotEnough }) {
  return (
    <section class="section" aria-labelledby="pans">
      <h2 id="pans">Pans against assays</h2>
      {'notEnough' in pans ? <NotEnoughShown answer={pans} /> : <Told pans={pans} />}
    </section>
  )
}

function Told({ pans: { points, limited, lines, recovery, sentence } }: { readonly pans: PansAgainstAssays }) {
  const { units } = book.value!, put = (v: number) => crewValue(v, 'g/t', units).value
  const marks = points.map((p): ChartPoint => ({
    id: p.bag, x: put(p.assay), y: put(p.pan), dot: 'full', answer: p.answer, says: `Bag ${p.bag}: pan ${crewText(p.pan, 'g/t', units)}, assay ${crewText(p.assay, 'g/t', units)}`,
  }))
  const rooms = logRoom(marks.flatMap(m => [m.x, m.y])), all = lines.find(l => l.of === 'all pans'), others = lines.filter(l => l !== all)
  const unit = put(1) // g/t in the crew's unit, so that the line's logs may stay in g/t
  const onLine = (x: number) => unit * Math.exp(all!.intercept + all!.slope * Math.log(x / unit))
  return (
    <>
      <p class="prose">{sentence}</p>
      {points.length > 0 && (
        <Chart name="Pans against assays" height={330} x={{ label: `assay, ${crewUnit('g/t', units)}`, log: true, ...rooms }} y={{ label: `pan as it showed, ${crewUnit('g/t', units)}`, log: true, ...rooms }} points={marks}>
          {s => (
            <>
              <clipPath id="pan-clip"><rect x={s.left} y={s.top} width={s.right - s.left} height={s.base - s.top} /></clipPath>
              {points.map(p => <path key={p.bag} class="chart-bars" clip-path="url(#pan-clip)" d={`M${s.x(put(p.assay) * Math.exp(-p.assaySd))} ${s.y(put(p.pan))}H${s.x(put(p.assay) * Math.exp(p.assaySd))}M${s.x(put(p.assay))} ${s.y(put(p.pan) * Math.exp(-p.panSd))}V${s.y(put(p.pan) * Math.exp(p.panSd))}`} />)}
              <path class="chart-mean" d={lineThrough(s, [[rooms.low, rooms.low], [rooms.high, rooms.high]])} />
              {all && <path class="chart-fit" clip-path="url(#pan-clip)" d={lineThrough(s, [[rooms.low, onLine(rooms.low)], [rooms.high, onLine(rooms.high)]])} />}
            </>
          )}
        </Chart>
      )}
      <p class="chart-key"><span class="key-mean">pan and assay alike</span>{all && <span class="key-fit">the line through them</span>}<span class="soft">bars: one standard deviation</span></p>
      {limited > 0 && <p class="soft small">{limited} more {limited === 1 ? 'bag has' : 'bags have'} a limit or nothing on one side: counted in what pans keep, not on the line.</p>}
      <ul class="inputs">{recovery.map(r => <li key={r.id}><span>{r.sentence}</span><span><Figure answer={r}>{`${figures(r.value, 2)} %`}</Figure> <span class="soft small">{rangeText(r)}</span></span></li>)}</ul>
      {all && <p class="prose">{all.answer.sentence} <Figure answer={all.answer}>how it is drawn</Figure></p>}
      {others.length > 0 && (
        <details class="more"><summary>By panner and by material</summary><ul class="plain-list">{others.map(l => <li key={l.of}>{l.answer.sentence} <Figure answer={l.answer}>open</Figure></li>)}</ul></details>
      )}
    </>
  )
}
