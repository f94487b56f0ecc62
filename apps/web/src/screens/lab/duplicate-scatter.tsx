import type { DuplicatesAt, DuplicateStage } from '@lodebook/answers'
import { logRoom } from '../../drawing/axis.ts'
import { Chart, lineThrough } from '../../drawing/chart.tsx'
import type { ChartPoint, Dot } from '../../drawing/chart.tsx'
import { Figure } from '../../drawer/figure.tsx'
import { book } from '../../link/desk.ts'
import { crewText, crewUnit, crewValue } from '../../words/crew-value.ts'
import { Key } from './blanks-in-order.tsx'

export const stageDots: Readonly<Record<DuplicateStage, Dot>> = { field: 'full', crush: 'square', pulp: 'open', 'other laboratory': 'cross' }
export const stageWords: Readonly<Record<DuplicateStage, string>> = { field: 'cut twice', crush: 'split twice', pulp: 'run twice', 'other laboratory': 'two laboratories' }

/** First against second determination on logs, with the line on which they agree. */
export function DuplicateScatter({ duplicates }: { readonly duplicates: readonly DuplicatesAt[] }) {
  const { units } = book.value!, put = (v: number) => crewValue(v, 'g/t', units).value
  const pairs = duplicates.flatMap(d => d.pairs).filter(p => p.a.grade > 0 && p.b.grade > 0)
  const rooms = logRoom(pairs.flatMap(p => [put(p.a.grade), put(p.b.grade)]))
  const points = pairs.map((p): ChartPoint => ({
    id: p.answer.id, x: put(p.a.grade), y: put(p.b.grade), dot: stageDots[p.stage], answer: p.answer,
    says: `${p.a.bag} ${crewText(p.a.grade, 'g/t', units)}, ${p.b.bag} ${crewText(p.b.grade, 'g/t', units)}: ${stageWords[p.stage]}`,
  }))
  const twice: readonly (readonly [number, number])[] = [[rooms.low, rooms.low], [rooms.high, rooms.high]]
  return (
    <section class="section" aria-labelledby="duplicates">
      <h2 id="duplicates">Duplicates</h2>
      <ul class="plain-list prose">{duplicates.map(d => <li key={d.stage}>{d.sentence} <Figure answer={d.cv}>each pair</Figure></li>)}</ul>
      <Chart name="Duplicates against each other" height={330} x={{ label: `first, ${crewUnit('g/t', units)}`, log: true, ...rooms }} y={{ label: `second, ${crewUnit('g/t', units)}`, log: true, ...rooms }} points={points}>
        {s => (
          <>
            <path class="chart-mean" d={lineThrough(s, twice)} />
            <clipPath id="dup-clip"><rect x={s.left} y={s.top} width={s.right - s.left} height={s.base - s.top} /></clipPath>
            <path class="chart-warn" clip-path="url(#dup-clip)" d={lineThrough(s, twice.map(([a, b]) => [a, b * 2] as const)) + lineThrough(s, twice.map(([a, b]) => [a, b / 2] as const))} />
          </>
        )}
      </Chart>
      <p class="chart-key">{duplicates.map(d => <span key={d.stage}><Key dot={stageDots[d.stage]} /> {stageWords[d.stage]}</span>)}<span class="key-warn">twice as much, half as much</span></p>
    </section>
  )
}
