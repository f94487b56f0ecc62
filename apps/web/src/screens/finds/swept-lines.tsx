import type { SweptAt } from '@lodebook/answers'
import type { Enu } from '@lodebook/reckon'
import type { Point } from '../../drawing/view.ts'

/** Sides that are seen from above, and those that are seen from the side. */
const onPlan = ['left rib', 'right rib'], onSection = ['back', 'sill']

/** Stretches gone over with the detector: a broad line along the side, broken where it was silent. */
export function SweptLines({ sweeps, project, sheet }: {
  readonly sweeps: readonly SweptAt[]
  readonly project: (p: Enu) => Point
  readonly sheet: 'plan' | 'section'
}) {
  const own = sheet === 'plan' ? onPlan : onSection
  return (
    <>
      {sweeps.flatMap(sweep => sweep.lines.filter(l => own.includes(l.side) || !sweep.lines.some(other => own.includes(other.side))).map((l, i) => (
        <path key={`${sweep.entry}${l.side}${i}`} class={sweep.result === 'silent' ? 'swept silent' : 'swept rang'} d={pathOf(l.points.map(project))}>
          <title>{sweep.says}: {sweep.result === 'marks found' ? sweep.marks.join(', ') : sweep.result}</title>
        </path>
      )))}
    </>
  )
}

const pathOf = (points: readonly Point[]): string => points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(3)} ${y.toFixed(3)}`).join('')
