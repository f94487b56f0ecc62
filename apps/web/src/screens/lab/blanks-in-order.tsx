import type { BlankRun } from '@lodebook/answers'
import { Chart, DotDrawn } from '../../drawing/chart.tsx'
import type { ChartPoint } from '../../drawing/chart.tsx'
import { logRoom } from '../../drawing/axis.ts'
import { book } from '../../link/desk.ts'
import { crewText, crewUnit, crewValue } from '../../words/crew-value.ts'
import { counted } from '../../words/number.ts'

/** Blanks in the order in which they were run, each over what was run before it: gold that is carried over stands high after a rich bag. */
export function BlanksInOrder({ blanks }: { readonly blanks: readonly BlankRun[] }) {
  const { units } = book.value!, put = (v: number) => crewValue(v, 'g/t', units).value
  const points = blanks.map((b, i): ChartPoint => ({
    id: b.entry, x: i + 1, y: put(b.value), dot: b.failed ? 'bad' : b.below ? 'open' : 'full', label: b.bag, answer: b.answer,
    says: `Blank ${b.bag}: ${b.below ? 'less than ' : ''}${crewText(b.value, 'g/t', units)}${b.before ? `; run after ${b.before.bag}, which ran ${crewText(b.before.grade, 'g/t', units)}` : ''}`,
  }))
  const allowed = blanks.map(b => put(b.allowed)), failed = blanks.filter(b => b.failed).length
  const rooms = logRoom([...points.map(p => p.y), ...allowed, ...blanks.flatMap(b => b.before ? [put(b.before.grade)] : [])])
  return (
    <section class="section" aria-labelledby="blanks">
      <h2 id="blanks">Blanks</h2>
      <p class="prose">{failed === 0 ? `${counted(blanks.length, 'blank')}, none above what a blank may show.` : `${failed} of ${counted(blanks.length, 'blank')} above what a blank may show.`}</p>
      <Chart
        name="Blanks in the order of the runs"
        x={{ label: 'blanks, in the order of the runs', low: 0.5, high: blanks.length + 0.5, marks: blanks.length > 20 ? [] : blanks.map((_, i) => ({ at: i + 1, text: String(i + 1) })) }}
        y={{ label: `gold, ${crewUnit('g/t', units)}`, log: true, ...rooms }}
        points={points}
      >
        {s => (
          <>
            {blanks.map((b, i) => <path key={b.entry} class="chart-limit" d={`M${s.x(i + 0.5)} ${s.y(allowed[i]!)}H${s.x(i + 1.5)}`} />)}
            {blanks.map((b, i) => b.before && (
              <g key={b.entry}>
                <path class="chart-drop" d={`M${s.x(i + 1)} ${s.y(put(b.before.grade))}V${s.y(put(b.value))}`} />
                <g transform={`translate(${s.x(i + 1)} ${s.y(put(b.before.grade))})`}><DotDrawn dot="cross" /></g>
              </g>
            ))}
          </>
        )}
      </Chart>
      <p class="chart-key"><span><Key dot="full" /> blank</span><span><Key dot="open" /> below the limit</span><span><Key dot="bad" /> too high</span><span><Key dot="cross" /> what ran before it</span><span class="key-limit">what a blank may show</span></p>
    </section>
  )
}

export const Key = ({ dot }: { readonly dot: Parameters<typeof DotDrawn>[0]['dot'] }) => <svg width="20" height="20" viewBox="-10 -10 20 20" aria-hidden="true"><DotDrawn dot={dot} /></svg>
