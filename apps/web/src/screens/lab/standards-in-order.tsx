import type { StandardChart } from '@lodebook/answers'
import { Chart } from '../../drawing/chart.tsx'
import type { ChartPoint } from '../../drawing/chart.tsx'
import { figures } from '../../words/number.ts'

/** A control chart for each standard: standard deviations from the certificate, in the order of the runs. */
export function StandardsInOrder({ charts }: { readonly charts: readonly StandardChart[] }) {
  return (
    <section class="section" aria-labelledby="standards">
      <h2 id="standards">Standards</h2>
      {charts.map((chart) => {
        const points = chart.runs.map((r, i): ChartPoint => ({
          id: r.entry, x: i + 1, y: Math.max(-5.5, Math.min(5.5, r.z)), dot: r.rejected ? 'bad' : r.rules.length > 0 ? 'open' : 'full', label: r.bag, answer: r.answer,
          says: `${r.bag}, ${r.certificate}: ${figures(r.z, 2)} standard deviations${r.rules.length > 0 ? ` (${r.rules.join(', ')})` : ''}`,
        }))
        const most = Math.max(3.6, ...points.map(p => Math.abs(p.y) + 0.4)), runs = chart.runs.length
        return (
          <div key={chart.name}>
            <p class="prose">{chart.sentence}</p>
            <Chart
              name={`Control chart of ${chart.name}`}
              height={210}
              x={{ label: 'runs, in order', low: 0.5, high: runs + 0.5, marks: chart.runs.length > 20 ? [] : chart.runs.map((_, i) => ({ at: i + 1, text: String(i + 1) })) }}
              y={{ label: 'standard deviations', low: -most, high: most, marks: [-3, -2, 0, 2, 3].map(at => ({ at, text: at < 0 ? `−${-at}` : String(at) })) }}
              points={points}
            >
              {s => (
                <>
                  <path class="chart-mean" d={`M${s.left} ${s.y(0)}H${s.right}`} />
                  <path class="chart-warn" d={`M${s.left} ${s.y(2)}H${s.right}M${s.left} ${s.y(-2)}H${s.right}`} />
                  <path class="chart-limit" d={`M${s.left} ${s.y(3)}H${s.right}M${s.left} ${s.y(-3)}H${s.right}`} />
                </>
              )}
            </Chart>
          </div>
        )
      })}
    </section>
  )
}
