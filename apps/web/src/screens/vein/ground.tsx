import type { HeadingShape } from '@lodebook/answers'
import type { Enu } from '@lodebook/reckon'
import type { Point } from '../../drawing/view.ts'

export type Project = (p: Enu) => Point

/** A plan with grid north up, as the net has it. */
export const northUp: Project = ([east, north]) => ({ x: east, y: north })

export const line = (points: readonly Point[], close = false): string =>
  points.length === 0 ? '' : `M${points.map(({ x, y }) => `${x.toFixed(3)} ${y.toFixed(3)}`).join('L')}${close ? 'Z' : ''}`

/** The headings in plan: first as one opening, then their walls, so that they join without a line across. */
export function HeadingsOnPlan({ headings, project }: { readonly headings: readonly HeadingShape[], readonly project: Project }) {
  const outline = (h: HeadingShape) => line([...h.left, ...[...h.right].reverse()].map(project), true)
  const under = headings.filter(h => h.sort !== 'surface')
  return (
    <>
      {under.map(h => <path key={h.entry} class={h.rough ? 'passage rough' : 'passage'} d={outline(h)} />)}
      {under.map(h => <path key={h.entry} class="passage-fill" d={outline(h)} />)}
    </>
  )
}
