import type { NetGroup, NetReading, VeinAt, VeinSheet, Workings } from '@lodebook/answers'
import type { Enu } from '@lodebook/reckon'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { openAnswer, openEntry, open } from '../../drawer/drawer-state.ts'
import { Drawing } from '../../drawing/drawing.tsx'
import type { Thing } from '../../drawing/drawing.tsx'
import { fitTogether } from '../../drawing/layout.ts'
import { NorthsDrawn, ScaleBarDrawn } from '../../drawing/margin-parts.tsx'
import { dipSymbol, InlineMark, poleSymbol } from '../../drawing/symbols.tsx'
import { useSize } from '../../drawing/use-size.ts'
import type { Size } from '../../drawing/use-size.ts'
import { boundsOf, toScreen } from '../../drawing/view.ts'
import type { View } from '../../drawing/view.ts'
import { Figure } from '../../drawer/figure.tsx'
import { azimuthText, counted, decimal } from '../../words/number.ts'
import { HeadingsOnPlan, line, northUp } from './ground.tsx'
import { levelsOf, NetLines, radius } from './net-lines.tsx'
import { tapeUnit } from '../../words/tape-unit.ts'
import { toggled } from '../../drawing/toggled.ts'

const netBounds = { minX: -11, minY: -11, maxX: 11, maxY: 11 }
const nowhere = { minX: -10, minY: -10, maxX: 10, maxY: 10 }

/** How the vein lies: readings on the plan and on the net, one object seen twice. What is pointed at on one is marked on the other. */
export function LieSheet({ sheet, vein, workings }: { readonly sheet: VeinSheet, readonly vein: VeinAt, readonly workings: Workings }) {
  const { net } = sheet
  const [hidden, setHidden] = useState<ReadonlySet<string>>(new Set()), [chosen, setChosen] = useState(net.groups[0]?.key), [lit, setLit] = useState<string>()
  const [plan, setPlan] = useState<View>(), [disc, setDisc] = useState<View>()
  const [planSize, setPlanSize] = useState<Size>(), [discSize, setDiscSize] = useState<Size>()
  const body = useRef<HTMLDivElement>(null), room = useSize(body), wide = room.width >= 900
  const group = net.groups.find(g => g.key === chosen)
  const shown = net.groups.filter(g => !hidden.has(g.key))
  const readings = useMemo(() => shown.flatMap(g => g.readings.map(r => ({ ...r, feature: g.feature }))), [net, hidden])
  const places = useMemo(() => new Map(workings.placed.filter(p => p.kind === 'structure').map(p => [p.entry, p])), [workings])
  const planThings = useMemo((): readonly Thing[] => [
    ...workings.headings.flatMap((h): Thing[] => { const at = h.sill[Math.floor(h.sill.length / 2)]; return at && h.sort !== 'surface' ? [{ id: `heading:${h.entry}`, at: northUp(at), symbol: 'name', label: h.name, weight: 80, says: `Heading ${h.name}` }] : [] }),
    ...readings.flatMap((r): Thing[] => { const place = places.get(r.entry); return place ? [{ id: r.entry, at: northUp(place.point), symbol: dipSymbol(r.feature), turn: turnOf(r), label: labelOf(r), labelFrom: 14, weight: r.feature === 'vein' ? 30 : 10, says: r.says }] : [] }),
  ], [readings, places, workings])
  const netThings = useMemo((): readonly Thing[] => readings.map(r => ({ id: r.entry, at: { x: r.xy[0] * radius, y: r.xy[1] * radius }, symbol: poleSymbol(r.feature), label: '', weight: 100, says: r.says })), [readings])
  const planBounds = useMemo(() => boundsOf([...places.values()].map(p => northUp(p.point))) ?? nowhere, [places])
  const planFit = useMemo(() => planSize && fitTogether([planBounds], [planSize])?.[0], [planBounds, planSize])
  const discFit = useMemo(() => discSize && fitTogether([netBounds], [discSize])?.[0], [discSize])
  useEffect(() => setPlan(planFit), [planFit])
  useEffect(() => setDisc(discFit), [discFit])
  const says = readings.find(r => r.entry === lit)?.says
  const point = (_: unknown, id: string | undefined) => { if (id !== undefined && !id.startsWith('heading:')) setLit(id) }
  const pick = (ids: readonly string[]) => {
    const entries = ids.map(id => id.replace('heading:', ''))
    if (entries.length === 1) openEntry(entries[0]!)
    else open({ is: 'several', title: 'Which of these?', of: entries.slice(0, 12).map(id => ({ label: labelFor(id, [...planThings, ...netThings]), page: { is: 'entry', id } })) })
  }
  const fingerOn = (things: readonly Thing[]) => things.find(t => t.id === lit)?.at
  const side = wide ? Math.min(460, Math.round(room.width * 0.42)) : Math.min(room.width, 460)
  const toggle = (key: string) => setHidden(toggled(hidden, key))

  return (
    <section class="sheet" aria-label="How the vein lies">
      <div ref={body} class={wide ? 'lie-body wide' : 'lie-body'}>
        <div>
          <Drawing
            name="Net"
            height={side}
            view={disc}
            fitted={discFit}
            onView={setDisc}
            onSize={setDiscSize}
            things={netThings}
            onPick={pick}
            onPoint={point}
            finger={fingerOn(netThings)}
            head={<p><b>Net</b> lower hemisphere, equal area; poles of planes, ends of lines</p>}
            over={view => <NetWords view={view} group={group} cutoff={net.cutoff?.xy} />}
          >
            <NetLines net={net} group={group} />
          </Drawing>
        </div>
        <div>
          <Drawing
            name="Plan of readings"
            height={wide ? side : Math.round(Math.min(420, Math.max(260, room.width * 0.8)))}
            view={plan}
            fitted={planFit}
            onView={setPlan}
            onSize={setPlanSize}
            things={planThings}
            onPick={pick}
            onPoint={point}
            finger={fingerOn(planThings)}
            head={<p><b>Plan of readings</b> grid north up</p>}
          >
            <HeadingsOnPlan headings={workings.headings} project={northUp} />
            {sheet.lie.breakLine && <path class="break-line" d={line(sheet.lie.breakLine.map(p => northUp(inGrid(vein, p.along, p.down))))} />}
          </Drawing>
        </div>
        <div class="lie-says">
          <p class="finger-says" aria-live="off">{says ?? <span class="soft">Point at a reading here or there: it is marked on both. Tap to open it.</span>}</p>
        </div>
        <div class="lie-margin">
          <fieldset class="legend net-legend">
            <legend class="off-screen">What is drawn</legend>
            {net.groups.map(g => (
              <label key={g.key}><input type="checkbox" checked={!hidden.has(g.key)} onChange={() => toggle(g.key)} /><InlineMark name={poleSymbol(g.feature)} /><span>{g.label}</span><span class="n">{g.readings.length}</span></label>
            ))}
          </fieldset>
          <div class="net-said">
            <label class="label" for="net-group">Contours and mean of</label>
            <select id="net-group" class="box" value={chosen} onChange={e => setChosen(e.currentTarget.value)}>
              {net.groups.map(g => <option key={g.key} value={g.key}>{g.label}, {counted(g.readings.length, 'reading')}</option>)}
            </select>
            {group && <MeanSaid group={group} />}
            {net.cutoff && (
              <p>
                <Figure answer={net.cutoff.answer}>
                  Cut-off line {azimuthText(net.cutoff.line.trend)}, {decimal(net.cutoff.line.plunge, 0)}° down
                </Figure>: the ring.
              </p>
            )}
            <ul class="line-key" aria-label="Lines">
              <li><svg width="34" height="12" aria-hidden="true"><path class="net-vein" d="M0 6H34" /></svg>vein as fitted</li>
              {net.planes.some(p => p.is === 'fault') && <li><svg width="34" height="12" aria-hidden="true"><path class="fault" d="M0 6H34" /></svg>fault as fitted</li>}
              <li><svg width="34" height="12" aria-hidden="true"><path class="net-mean" d="M0 6H34" /></svg>mean of the chosen readings, and its 95 in 100 cone</li>
            </ul>
          </div>
          <div class="net-scale">
            {plan && <ScaleBarDrawn k={plan.k} room={150} unit={tapeUnit()} />}
            <button type="button" class="norths-button" onClick={() => openAnswer(workings.norths.answer)} aria-haspopup="dialog"><NorthsDrawn up={0} trueNorth={workings.norths.trueNorth} magneticNorth={workings.norths.magneticNorth} /><span class="fig-look">norths</span></button>
          </div>
        </div>
      </div>
    </section>
  )
}

function MeanSaid({ group }: { readonly group: NetGroup }) {
  const levels = group.density ? levelsOf(group.density.most) : []
  return (
    <>
      {group.mean ? <p><Figure answer={group.mean.answer}>{group.mean.answer.sentence}</Figure></p> : <p class="soft">No mean: {group.noMean}.</p>}
      <p class="soft small">{levels.length > 0 ? `Contours every ${levels[0]} standard deviations above an even scatter; the densest place stands at ${decimal(group.density!.most, 0)}. Kamb’s rule.` : group.density ? 'No denser anywhere than chance makes it.' : 'Fewer than six readings: no contours.'}</p>
    </>
  )
}

function NetWords({ view, group, cutoff }: {
  readonly view: View
  readonly group: NetGroup | undefined
  readonly cutoff: readonly [number, number] | undefined
}) {
  const at = (x: number, y: number) => toScreen(view, { x: x * radius, y: y * radius })
  const mean = group?.mean && at(...group.mean.xy), cut = cutoff && at(...cutoff)
  return (
    <g class="net-words" aria-hidden="true">
      {([['N', 0, 1.1], ['E', 1.1, 0], ['S', 0, -1.1], ['W', -1.1, 0]] as const).map(([word, x, y]) => { const p = at(x, y); return <text key={word} x={p.x} y={p.y + 4} text-anchor="middle">{word}</text> })}
      {cut && <circle class="net-cut" cx={cut.x} cy={cut.y} r="7" />}
      {mean && <path class="net-mean-mark" d={`M${mean.x - 8} ${mean.y}h16M${mean.x} ${mean.y - 8}v16`} />}
    </g>
  )
}

/** A mark's turn on a plan with north up: strike from east, clockwise; of a line its trend. */
const turnOf = (r: NetReading): number => (r.is === 'line' ? r.line.trend : r.attitude!.strike) - 90
const labelOf = (r: NetReading): string => decimal(r.is === 'line' ? r.line.plunge : r.attitude!.dip, 0)
const labelFor = (id: string, things: readonly Thing[]): string => things.find(t => t.id === id)?.says ?? id
const inGrid = ({ origin, alongAxis, downAxis }: VeinAt, along: number, down: number): Enu =>
  [0, 1, 2].map(k => origin[k]! + along * alongAxis[k]! + down * downAxis[k]!) as unknown as Enu
