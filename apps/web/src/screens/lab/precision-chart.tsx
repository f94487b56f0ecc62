import type { DuplicatesAt, ExpectedCurve } from '@lodebook/answers'
import { logRoom } from '../../drawing/axis.ts'
import { Chart, lineThrough } from '../../drawing/chart.tsx'
import type { ChartPoint } from '../../drawing/chart.tsx'
import { book } from '../../link/desk.ts'
import { crewText, crewUnit, crewValue } from '../../words/crew-value.ts'
import { figures } from '../../words/number.ts'
import { Key } from './blanks-in-order.tsx'
import { stageDots, stageWords } from './duplicate-scatter.tsx'

/** How far pairs part, against their grade, beside what the count of grains makes of an assay and of a pan. */
export function PrecisionChart({ duplicates, expected }: { readonly duplicates: readonly DuplicatesAt[], readonly expected: readonly ExpectedCurve[] }) {
  const { units } = book.value!, put = (v: number) => crewValue(v, 'g/t', units).value
  const pairs = duplicates.flatMap(d => d.pairs), middle = (p: typeof pairs[number]) => (p.a.grade + p.b.grade) / 2
  const points = pairs.map((p): ChartPoint => ({
    id: p.answer.id, x: put(middle(p)), y: Math.max(100 * p.shown, 1), dot: stageDots[p.stage], answer: p.answer,
    says: `${p.a.bag} and ${p.b.bag} at ${crewText(middle(p), 'g/t', units)}: ${figures(100 * p.shown, 2)} %, ${figures(100 * p.expected, 2)} % expected`,
  }))
  const rooms = logRoom(points.map(p => p.x))
  return (
    <section class="section" aria-labelledby="precision">
      <h2 id="precision">How far one figure can be trusted</h2>
      <p class="prose soft small">Each mark is a pair: how far its two part, as a standard deviation. The lines are what the count of grains and the analysis make on average; marks well above them have met something else, such as a bad split or a mixed-up bag.</p>
      <Chart
        name="Precision against grade"
        height={330}
        x={{ label: `grade, ${crewUnit('g/t', units)}`, log: true, ...rooms }}
        y={{ label: 'one standard deviation, %', log: true, low: 0.9, high: 400, marks: [1, 2, 5, 10, 20, 50, 100, 200].map(at => ({ at, text: String(at) })) }}
        points={points}
      >
        {s => expected.map((curve, i) => {
          const on = curve.points.map(p => [put(p.grade), Math.min(400, 100 * p.relativeSd)] as const).filter(([x]) => x >= rooms.low && x <= rooms.high)
          const end = on.at(-1)
          return (
            <g key={curve.name}>
              <path class={i === 0 ? 'chart-theory' : 'chart-theory dashed'} d={lineThrough(s, on)} />
              {end && <text class="line-name" x={s.right - 4} y={s.y(end[1]) - 7} text-anchor="end">{curve.name}</text>}
            </g>
          )
        })}
      </Chart>
      <p class="chart-key">{duplicates.map(d => <span key={d.stage}><Key dot={stageDots[d.stage]} /> {stageWords[d.stage]}</span>)}</p>
    </section>
  )
}
