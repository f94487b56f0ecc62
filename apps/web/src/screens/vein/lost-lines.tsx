import type { LostOnSheet } from '@lodebook/answers'
import { line } from './ground.tsx'
import type { Project } from './ground.tsx'

/** A lost part on a plan or a section: the band of four cases in five, twenty cases, the known vein up to the fault, and the fault. */
export function LostLines({ on, project, vein, fault, cases }: {
  readonly on: LostOnSheet
  readonly project: Project
  readonly vein: string
  readonly fault: string
  readonly cases: boolean
}) {
  const { band, here } = on
  return (
    <>
      {band && <path class="lost-band" d={line([...band.low, ...[...band.high].reverse()].map(project), true)}><title>Four cases in five</title></path>}
      {cases && on.cases.map((c, i) => <path key={i} class="lost-case" d={line(c.map(project))} />)}
      {band && <path class="lost-middle" d={line(band.middle.map(project))}><title>{vein}, middle case</title></path>}
      {here && <><path class="vein" d={line(here.map(project))} /><path class="vein-edge" d={line(here.map(project))}><title>{vein}</title></path></>}
      {on.fault && <path class="fault" d={line(on.fault.map(project))}><title>{fault}</title></path>}
    </>
  )
}
