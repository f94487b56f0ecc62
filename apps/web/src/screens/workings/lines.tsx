import type { HeadingShape, VeinAt, Workings } from '@lodebook/answers'
import type { Enu } from '@lodebook/reckon'
import type { Point } from '../../drawing/view.ts'
import { onPlan, onSection } from './section-line.ts'
import type { SheetModel } from './sheet.ts'
import { faultAtLevel, faultOnVein, veinAtLevel } from './vein-trace.ts'

type Project = (p: Enu) => Point
const line = (points: readonly Point[]): string => points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(3)} ${y.toFixed(3)}`).join('')
const closed = (a: readonly Enu[], b: readonly Enu[], project: Project): string => a.length + b.length < 3 ? '' : `${line([...a, ...[...b].reverse()].map(project))}Z`

/** How many times their size the ellipses of the stations are drawn, so that they can be seen. */
export const ellipseTimes = 10

interface Props { readonly workings: Workings, readonly vein: VeinAt | undefined, readonly model: SheetModel }

/** The lines and areas of the plan, in metres. Passages first as one opening, then their walls, so that headings join without a line across. */
export function PlanLines({ workings, vein, model, ellipses }: Props & { readonly ellipses: boolean }) {
  const project: Project = p => onPlan(p, model.planAzimuth)
  return (
    <>
      <Hatch id="gone-plan" />
      <Passages headings={workings.headings} sides={h => [h.left, h.right]} project={project} />
      {workings.paced.map(p => <path key={p.entry} class="passage rough" d={closed(p.left, p.right, project)}><title>{p.name}, stepped only</title></path>)}
      {workings.workedOut.map(w => <path key={w.entry} class="gone" fill="url(#gone-plan)" d={`${line(w.corners.map(project))}Z`} />)}
      <Legs workings={workings} project={project} />
      {vein && <Traces vein={vein} model={model} project={project} />}
      {ellipses && workings.stations.map((s) => {
        const { x, y } = project(s.point)
        return <ellipse key={s.name} class="ellipse" cx={x} cy={y} rx={s.ellipse.major * ellipseTimes} ry={s.ellipse.minor * ellipseTimes} transform={`rotate(${model.planAzimuth - s.ellipse.azimuth} ${x} ${y})`} />
      })}
    </>
  )
}

/** The lines and areas of the long section, in metres: along the section to the right, elevation up. */
export function SectionLines({ workings, vein, model }: Props) {
  const project: Project = p => onSection(p, model.sectionAzimuth)
  const fault = vein && faultOnVein(vein, ...downs(vein, model))
  return (
    <>
      <Hatch id="gone-section" />
      <Passages headings={workings.headings} sides={h => [h.back, h.sill]} project={project} />
      {workings.paced.map(p => <path key={p.entry} class="passage rough" d={closed(p.back, p.sill, project)}><title>{p.name}, stepped only</title></path>)}
      {workings.workedOut.map(w => <path key={w.entry} class="gone" fill="url(#gone-section)" d={`${line(w.corners.map(project))}Z`} />)}
      <Legs workings={workings} project={project} />
      {fault && <path class="fault" d={line(fault.map(project))}><title>{vein.fault!.name}</title></path>}
    </>
  )
}

/** Depths down the vein that lie a little above and below everything drawn. */
function downs(vein: VeinAt, { section }: SheetModel): [number, number] {
  const pitch = Math.min(vein.downAxis[2], -0.1), spare = (section.maxY - section.minY) * 0.15 + 4
  return [(section.maxY + spare - vein.origin[2]) / pitch, (section.minY - spare - vein.origin[2]) / pitch]
}

function Traces({ vein, model, project }: { readonly vein: VeinAt, readonly model: SheetModel, readonly project: Project }) {
  const at = vein.stations.map(s => s.at.along), spare = 6
  const trace = at.length > 0 ? veinAtLevel(vein, model.level, Math.min(...at) - spare, Math.max(...at) + spare) : undefined
  const fault = faultAtLevel(vein, model.level, 14)
  return (
    <>
      {trace && <><path class="vein" d={line(trace.map(project))} /><path class="vein-edge" d={line(trace.map(project))}><title>Vein {vein.name}</title></path></>}
      {fault && <path class="fault" d={line(fault.map(project))}><title>{vein.fault!.name}</title></path>}
    </>
  )
}

const Passages = ({ headings, sides, project }: {
  readonly headings: readonly HeadingShape[]
  readonly sides: (h: HeadingShape) => readonly [readonly Enu[], readonly Enu[]]
  readonly project: Project
}) => (
  <>
    {headings.map(h => <path key={h.entry} class={h.rough ? 'passage rough' : 'passage'} d={closed(...sides(h), project)} />)}
    {headings.map(h => <path key={h.entry} class="passage-fill" d={closed(...sides(h), project)} />)}
  </>
)

const Legs = ({ workings, project }: { readonly workings: Workings, readonly project: Project }) => (
  <>{workings.legs.map(l => <path key={l.entry} class={l.leftOut === '' || l.leftOut === 'nothing' ? 'leg' : 'leg left-out'} d={line([project(l.a), project(l.b)])} />)}</>
)

/** Slanting lines for ground that is gone; lines, so that it reads without colour. */
const Hatch = ({ id }: { readonly id: string }) => (
  <defs><pattern id={id} width="1.1" height="1.1" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V1.1" class="hatch" stroke-width="0.12" style={{ vectorEffect: 'none' }} /></pattern></defs>
)
