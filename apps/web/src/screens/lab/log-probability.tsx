import type { PlottedSample } from '@lodebook/answers'
import { logRoom } from '../../drawing/axis.ts'
import { Chart } from '../../drawing/chart.tsx'
import type { ChartPoint } from '../../drawing/chart.tsx'
import { book } from '../../link/desk.ts'
import { crewText, crewUnit, crewValue } from '../../words/crew-value.ts'
import { counted } from '../../words/number.ts'

/** Shares of the bags and where they stand on the axis of a normal law, in standard deviations. */
const shares = [[1, -2.326], [5, -1.645], [10, -1.2816], [25, -0.6745], [50, 0], [75, 0.6745], [90, 1.2816], [95, 1.645], [99, 2.326]] as const

/** Grades against the share of bags below them: straight for one sort of ore, broken where two meet. */
export function LogProbability({ plotted, of }: { readonly plotted: readonly PlottedSample[], readonly of: number }) {
  const { units } = book.value!, put = (v: number) => crewValue(v, 'g/t', units).value
  const points = plotted.map((p): ChartPoint => ({ id: p.bag, x: p.score, y: put(p.grade), dot: 'full', answer: p.answer, says: `Bag ${p.bag}: ${crewText(p.grade, 'g/t', units)}; ${Math.round(100 * p.share)} % of bags ran less` }))
  const most = Math.max(1.5, ...plotted.map(p => Math.abs(p.score) + 0.25))
  return (
    <section class="section" aria-labelledby="probability">
      <h2 id="probability">Is it one sort of ore?</h2>
      <p class="prose soft small">{plotted.length} of {counted(of, 'bag')}{of > plotted.length ? '; those with nothing found take their share of the places below' : ''}. One lognormal population lies on a straight line; a bend says that poor and rich ground, or two sorts of bag, stand together.</p>
      <Chart
        name="Log-probability plot"
        height={330}
        x={{ label: 'bags below, %', low: -most, high: most, marks: shares.filter(([, z]) => Math.abs(z) <= most).map(([p, z]) => ({ at: z, text: String(p) })) }}
        y={{ label: `gold, ${crewUnit('g/t', units)}`, log: true, ...logRoom(points.map(p => p.y)) }}
        points={points}
      />
    </section>
  )
}
