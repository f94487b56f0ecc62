import type { LostHeading, LostOnSheet, LostPart, Workings } from '@lodebook/answers'
import type { Enu } from '@lodebook/reckon'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { openAnswer } from '../../drawer/drawer-state.ts'
import { Drawing } from '../../drawing/drawing.tsx'
import type { Thing } from '../../drawing/drawing.tsx'
import { GridCrosses, SectionTicks } from '../../drawing/grid.tsx'
import { fitTogether } from '../../drawing/layout.ts'
import { NorthsDrawn, ScaleBarDrawn } from '../../drawing/margin-parts.tsx'
import { InlineMark } from '../../drawing/symbols.tsx'
import { useSize } from '../../drawing/use-size.ts'
import type { Size } from '../../drawing/use-size.ts'
import { boundsOf, toScreen } from '../../drawing/view.ts'
import type { Point, View } from '../../drawing/view.ts'
import { book } from '../../link/desk.ts'
import { crewText, crewUnit } from '../../words/crew-value.ts'
import { azimuthText, decimal } from '../../words/number.ts'
import { HeadingsOnPlan, line, northUp } from './ground.tsx'
import type { Project } from './ground.tsx'
import { LostLines } from './lost-lines.tsx'
import { dot } from '../../drawing/vector.ts'

const nowhere = { minX: -10, minY: -10, maxX: 10, maxY: 10 }
const nearSection = 4 // metres off the section within which a station is marked on it

/** The lost part on the plan at the heading's level and on the cross section through it, at one scale. */
export function LostSheet({ lost, workings }: { readonly lost: LostPart, readonly workings: Workings }) {
  const [cases, setCases] = useState(true), [lit, setLit] = useState<Enu>(), [says, setSays] = useState('')
  const body = useRef<HTMLDivElement>(null), room = useSize(body), wide = room.width >= 900
  const heading = 'notEnough' in lost.heading ? undefined : lost.heading
  const cross = useMemo(() => crossOf(lost.section), [lost])
  const plan = useThings(lost, workings, northUp, () => true, heading)
  const section = useThings(lost, workings, cross, p => Math.abs(offSection(lost.section, p)) < nearSection, heading)
  const height = wide ? 440 : 330
  const point = (_: Point | undefined, thing: string | undefined) => {
    const station = thing && workings.stations.find(s => `station:${s.name}` === thing)
    setLit(station ? station.point : undefined)
    setSays(thing === undefined ? '' : [...plan.things, ...section.things].find(t => t.id === thing)?.says ?? '')
  }
  const pick = (ids: readonly string[]) => {
    const station = workings.stations.find(s => `station:${s.name}` === ids[0])
    openAnswer(station ? station.answer : heading ? heading.length : lost.apart)
  }
  const { units } = book.value!
  const level = lost.plan.origin[2]
  return (
    <section class="sheet" aria-label={`Where ${lost.vein} may go on past ${lost.fault}`}>
      <div ref={body} class={wide ? 'lost-body wide' : 'lost-body'}>
        <div>
          <Drawing
            {...plan.drawing}
            name="Plan past the fault"
            height={height}
            onPick={pick}
            onPoint={point}
            finger={lit && northUp(lit)}
            head={<p><b>Plan past the fault</b> grid north up, at elevation {crewText(level, 'm', units, 1)}</p>}
            over={(view, size) => (
              <>
                <GridCrosses view={view} size={size} marks={plan.things.map(t => t.at)} toGrid={(x, y) => [x, y]} toPlan={(e, n) => ({ x: e, y: n })} />
                {heading && <HeadingArrow heading={heading} project={northUp} view={view} units={units} />}
              </>
            )}
          >
            <HeadingsOnPlan headings={workings.headings} project={northUp} />
            <LostLines on={lost.plan} project={northUp} vein={lost.vein} fault={lost.fault} cases={cases} />
          </Drawing>
        </div>
        <div>
          <Drawing
            {...section.drawing}
            name="Cross section past the fault"
            height={height}
            onPick={pick}
            onPoint={point}
            finger={lit && cross(lit)}
            head={<p><b>Cross section</b> {azimuthText(azimuthOf(lost.section.across))} to the right, through {heading ? heading.station : 'the fault'}</p>}
            over={(view, size) => (
              <>
                <SectionTicks view={view} size={size} along={`from ${heading ? heading.station : 'there'}`} up="elevation" />
                {heading && <HeadingArrow heading={heading} project={cross} view={view} units={units} />}
              </>
            )}
          >
            <LostLines on={lost.section} project={cross} vein={lost.vein} fault={lost.fault} cases={cases} />
          </Drawing>
        </div>
        <p class="finger-says lie-says" aria-live="off">{says || <span class="soft">Point at a station to see it on both. Tap the arrow’s head for how it was worked out.</span>}</p>
        <div class="lie-margin">
          <ul class="line-key bare" aria-label="Lines">
            <li><svg width="34" height="16" aria-hidden="true"><path class="lost-band" d="M0 1H34V15H0Z" /></svg>four cases in five run in this band</li>
            <li><svg width="34" height="12" aria-hidden="true"><path class="lost-middle" d="M0 6H34" /></svg>middle case</li>
            <li><svg width="34" height="12" aria-hidden="true"><path class="vein" d="M0 6H34" /><path class="vein-edge" d="M0 6H34" /></svg>{lost.vein}, as known</li>
            <li><svg width="34" height="12" aria-hidden="true"><path class="fault" d="M0 6H34" /></svg>{lost.fault}</li>
            {heading && <li><InlineMark name="face" />heading, to the middle case</li>}
          </ul>
          <fieldset class="legend"><legend class="off-screen">What is drawn</legend><label><input type="checkbox" checked={cases} onChange={e => setCases(e.currentTarget.checked)} /><span>Twenty cases, each as likely as the next</span></label></fieldset>
          <div class="net-scale">
            {plan.drawing.view && <ScaleBarDrawn k={plan.drawing.view.k} room={150} unit={crewUnit('m', units) === 'ft' ? 'ft' : 'm'} />}
            <button type="button" class="norths-button" onClick={() => openAnswer(workings.norths.answer)} aria-haspopup="dialog"><NorthsDrawn up={0} trueNorth={workings.norths.trueNorth} magneticNorth={workings.norths.magneticNorth} /><span class="fig-look">norths</span></button>
          </div>
        </div>
      </div>
    </section>
  )
}

/** A view's things, its bounds and its state. */
function useThings(lost: LostPart, workings: Workings, project: Project, near: (p: Enu) => boolean, heading: LostHeading | undefined) {
  const [view, setView] = useState<View>(), [size, setSize] = useState<Size>()
  const on = project === northUp ? lost.plan : lost.section
  const things = useMemo((): readonly Thing[] => [
    ...workings.stations.filter(s => near(s.point)).map((s): Thing => ({ id: `station:${s.name}`, at: project(s.point), symbol: 'station', label: s.name, weight: s.name === heading?.station ? 90 : 20, labelFrom: 3, says: `Station ${s.name}` })),
    ...(heading ? [{ id: 'heading', at: project(heading.to), symbol: 'name' as const, label: '', weight: 100, says: heading.length.sentence }] : []),
  ], [workings, lost, project])
  const bounds = useMemo(() => boundsOf([...(heading ? [heading.from, heading.to] : []), ...reachOf(on)].map(project)) ?? nowhere, [lost, project])
  const fitted = useMemo(() => size && fitTogether([bounds], [size])?.[0], [bounds, size])
  useEffect(() => setView(fitted), [fitted])
  return { things, drawing: { view, fitted, onView: setView, onSize: setSize, things } }
}

/** What must be in sight: the near ends of the band and where the fault meets the vein. */
function reachOf({ here, band }: LostOnSheet): readonly Enu[] {
  const middle = band ? [band.middle[0]!, band.middle[Math.floor(band.middle.length * 0.5)]!] : []
  const edges = band ? [band.low[0]!, band.high[0]!, band.low[Math.floor(band.low.length * 0.5)]!, band.high[Math.floor(band.high.length * 0.5)]!] : []
  return [...middle, ...edges, ...(here && middle[0] ? nearPart(here, middle[0]) : [])]
}

/** The known vein from the fault back for a few metres. */
function nearPart(here: readonly [Enu, Enu], from: Enu): readonly Enu[] {
  const [a, b] = far(here[0], from) < far(here[1], from) ? here : [here[1], here[0]], long = far(a, b)
  return long === 0 ? [a] : [a, [0, 1, 2].map(k => a[k]! + (b[k]! - a[k]!) * Math.min(1, 5 / long)) as unknown as Enu]
}

const far = (a: Enu, b: Enu): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])
const crossOf = ({ origin, across }: LostOnSheet): Project => p => ({ x: dot(across, [p[0] - origin[0], p[1] - origin[1], p[2] - origin[2]]), y: p[2] })
const offSection = ({ origin, across }: LostOnSheet, p: Enu): number => (p[0] - origin[0]) * across[1] - (p[1] - origin[1]) * across[0]
const azimuthOf = ([e, n]: Enu): number => Math.atan2(e, n) * 180 / Math.PI

function HeadingArrow({ heading, project, view, units }: { readonly heading: LostHeading, readonly project: Project, readonly view: View, readonly units: 'metres and g/t' | 'feet and oz/ton' }) {
  const [a, b] = [heading.from, heading.to].map(p => toScreen(view, project(p))) as [Point, Point]
  const long = Math.hypot(b.x - a.x, b.y - a.y), turn = Math.atan2(b.y - a.y, b.x - a.x) * 180 / Math.PI
  return (
    <g class="heading-arrow" aria-hidden="true">
      <path d={line([a, b].map(p => ({ x: p.x, y: p.y })))} />
      {long > 12 && <path class="head" d="M0 0-11-5.500V5.500Z" transform={`translate(${b.x} ${b.y}) rotate(${turn})`} />}
      <text x={b.x + 10} y={b.y + (b.y > a.y ? 20 : -10)}>{azimuthText(heading.bearing)}, {decimal(Number(crewText(heading.length.value, 'm', units, undefined, true).replace(/,/g, '')), 0)} {crewUnit('m', units)}</text>
    </g>
  )
}
