import type { Grade, Panel, VeinAt } from '@lodebook/answers'
import type { VeinPoint } from '@lodebook/reckon'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { open, openAnswer } from '../../drawer/drawer-state.ts'
import { Drawing } from '../../drawing/drawing.tsx'
import type { Thing } from '../../drawing/drawing.tsx'
import { SectionTicks } from '../../drawing/grid.tsx'
import { fitTogether, layOut } from '../../drawing/layout.ts'
import { lightOn, ramp } from '../../drawing/ramp.ts'
import { useSize } from '../../drawing/use-size.ts'
import type { Size } from '../../drawing/use-size.ts'
import { boundsOf, toScreen } from '../../drawing/view.ts'
import type { Bounds, Point, View } from '../../drawing/view.ts'
import { book } from '../../link/desk.ts'
import { ChoiceRow } from '../../shell/choice-row.tsx'
import { ground } from '../../shell/ground.ts'
import { crewText } from '../../words/crew-value.ts'
import { azimuthText, decimal } from '../../words/number.ts'
import { Cases } from './cases.tsx'
import { classesOf, shareOf } from './classes.ts'
import { DrawPanel } from './draw-panel.tsx'
import { GradeMargin } from './grade-margin.tsx'
import { quantities, shownAs } from './quantities.ts'
import type { Quantity } from './quantities.ts'

const nowhere: Bounds = { minX: -5, minY: -5, maxX: 5, maxY: 5 }
const at = ({ along, down }: VeinPoint): Point => ({ x: along, y: -down })
const path = (points: readonly VeinPoint[], close = false): string => points.length === 0 ? '' : `M${points.map(at).map(p => `${p.x.toFixed(2)} ${p.y.toFixed(2)}`).join('L')}${close ? 'Z' : ''}`

/** The vein laid flat, true to scale: panels in even colour with their numbers, samples, headings, what is worked out, and the fault that ends it. */
export function VeinSheet({ grade, vein, cut, onVein }: {
  readonly grade: Grade
  readonly vein: VeinAt
  /** The cut-off chosen, by its place among the grade's. */
  readonly cut: number
  /** Whether a heading runs in the vein for all its length, so that it can be drawn on it. */
  readonly onVein: (heading: string) => boolean
}) {
  const [quantity, setQuantity] = useState<Quantity>('grade'), [view, setView] = useState<View>(), [size, setSize] = useState<Size>(), [says, setSays] = useState('')
  const { units } = book.value!, on = ground.value
  const [way, setWay] = useState<number>(), [corners, setCorners] = useState<readonly VeinPoint[]>()
  const shown = useMemo(() => shownAs(quantity, units, grade.cutOffs, cut), [quantity, units, grade, cut])
  const classes = useMemo(() => classesOf(grade.panels.map(shown.of)), [grade, shown])
  const one = way === undefined || !shown.inCase ? undefined : grade.realisations[way]
  const valueOf = (p: Panel, i: number) => one ? shown.inCase!(one, i) : shown.of(p)
  const least = grade.cutOffs[cut]?.cutOff ?? 0
  const samples = useMemo(() => grade.samples.filter(s => s.at), [grade])
  const things = useMemo((): readonly Thing[] => [
    ...samples.map((s): Thing => ({
      id: `sample:${s.entry}`, at: at(s.at!), symbol: !s.used ? 'sample-unused' : s.below ? 'sample-below' : 'sample', label: s.bag, weight: s.grade, labelFrom: 22,
      says: `Bag ${s.bag}: ${s.below ? 'less than ' : ''}${crewText(s.grade, 'g/t', units)}, 8 in 10 between ${crewText(s.low, 'g/t', units)} and ${crewText(s.high, 'g/t', units)}${s.used ? '' : `; left aside: ${s.why}`}`,
    })),
    ...vein.stations.map((s): Thing => ({ id: `station:${s.name}`, at: at(s.at), symbol: 'station', label: s.name, weight: -1, labelFrom: 16, says: `Station ${s.name}` })),
    ...grade.drawn.map((p): Thing => ({ id: `drawn:${p.name}`, at: at(p.centre), symbol: 'name', label: p.name, weight: 1, says: p.answer.sentence })),
    ...grade.panels.map((p): Thing => ({
      id: `panel:${p.name}`, at: at(p.centre), symbol: 'name', label: '', weight: 0, area: true,
      says: `Panel ${p.name}: ${shown.label.toLowerCase()} ${shown.text(shown.of(p))} ${shown.unit}; ${crewText(p.ounces, 'oz', units)} of gold, 8 in 10 between ${crewText(p.low, 'oz', units)} and ${crewText(p.high, 'oz', units)}`,
    })),
  ], [samples, grade, vein, shown, units])
  const bounds = useMemo(() => boundsOf([...grade.panels.flatMap(p => p.corners), ...samples.map(s => s.at!)].map(at)) ?? nowhere, [grade, samples])
  const column = useRef<HTMLDivElement>(null), room = useSize(column)
  const laid = useMemo(() => layOut([bounds], room.width, innerHeight, on === 'print'), [bounds, room.width, on])
  const fitted = useMemo(() => size && fitTogether([bounds], [size], laid.scale)?.[0], [bounds, size, laid])
  useEffect(() => setView(fitted), [fitted])
  const headings = vein.headings.filter(h => onVein(h.name))
  const gone = [...headings.map(outlineOf), ...vein.workedOut.map(w => w.corners)].map(corners => corners.map(at))
  const lies = `strike ${azimuthText(vein.strike.value)} to the right, dip ${decimal(vein.dip.value, 0)}°; distances down the dip are true`
  const answerOf = (id: string) => id.startsWith('drawn:') ? grade.drawn.find(p => `drawn:${p.name}` === id)?.answer : id.startsWith('panel:') ? grade.panels.find(p => `panel:${p.name}` === id)?.answer : grade.samples.find(s => `sample:${s.entry}` === id)?.answer
  const pick = (ids: readonly string[]) => {
    const opened = ids.flatMap((id) => { const answer = answerOf(id); return answer ? [{ label: things.find(t => t.id === id)!.says, page: { is: 'answer' as const, answer } }] : [] })
    if (opened.length === 1) openAnswer(opened[0]!.page.answer)
    else if (opened.length > 1) open({ is: 'several', title: 'Which of these?', of: opened.slice(0, 12) })
  }

  return (
    <section class="sheet" aria-label="Long section of the vein">
      <div class="sheet-body">
        <div ref={column}>
          <Drawing
            name="Long section of the vein"
            height={laid.heights[0]!}
            view={view}
            fitted={fitted}
            onView={setView}
            onSize={setSize}
            things={things}
            onPick={pick}
            head={(
              <>
                <p><b>{vein.name}, laid flat</b> {lies}</p>
                <ChoiceRow label="Panels show" of={quantities} value={quantity} onChoose={setQuantity} say={q => q === 'range' ? 'range of its gold' : q === 'chance' ? 'chance above cut-off' : q} />
              </>
            )}
            areaAt={(p) => { const panel = grade.panels.find(q => inside(p, q.corners.map(at))); return panel && `panel:${panel.name}` }}
            onTap={corners && (p => setCorners([...corners, { along: p.x, down: -p.y }]))}
            onPoint={(_, id) => setSays(things.find(t => t.id === id)?.says ?? '')}
            over={(v, size) => (
              <>
                <SectionTicks view={v} size={size} along="along the vein" up="down the dip" downward />
                <g aria-hidden="true">{grade.panels.map((p, i) => !gone.some(g => middleOf(p).some(q => inside(q, g))) && <PanelNumber key={p.name} panel={p} view={v} text={shown.text(valueOf(p, i))} light={lightOn(shareOf(classes, valueOf(p, i)), on)} />)}</g>
              </>
            )}
          >
            <defs><pattern id="gone-vein" width="1.1" height="1.1" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V1.1" class="hatch" stroke-width="0.12" style={{ vectorEffect: 'none' }} /></pattern></defs>
            {grade.panels.map((p, i) => <path key={p.name} class={p.broken.grade < least ? 'panel below' : 'panel'} fill={ramp(shareOf(classes, valueOf(p, i)), on)} d={path(p.corners, true)} />)}
            {grade.drawn.map(p => <path key={p.name} class="panel-drawn" d={path(p.corners, true)}><title>{p.name}</title></path>)}
            {corners && <path class="panel-drawn" d={path(corners, corners.length > 2)} />}
            {headings.map(h => <path key={h.name} class="passage" d={path(outlineOf(h), true)}><title>{h.name}</title></path>)}
            {vein.workedOut.map(w => <path key={w.entry} class="gone" fill="url(#gone-vein)" d={path(w.corners, true)}><title>{w.name}, worked out</title></path>)}
            {vein.fault && <FaultLine vein={vein} high={bounds.maxY + 5} low={bounds.minY - 5} />}
          </Drawing>
          {shown.inCase && <Cases count={grade.realisations.length} value={way} onChoose={setWay} />}
          <p class="finger-says" aria-live="off">{says || <span class="soft">Point at a panel or a sample to read it. Tap to open it down to its entries.</span>}</p>
          <div class="draw-row"><DrawPanel vein={vein} corners={corners} onCorners={setCorners} /></div>
        </div>
        <GradeMargin grade={grade} vein={vein} k={view?.k} scale={laid.scale} classes={classes} shown={shown} />
      </div>
    </section>
  )
}

function PanelNumber({ panel, view, text, light }: { readonly panel: Panel, readonly view: View, readonly text: string, readonly light: boolean }) {
  const xs = panel.corners.map(c => c.along), wide = (Math.max(...xs) - Math.min(...xs)) * view.k, short = text.replace(/^0\./, '.')
  const small = wide < text.length * 8 + 4
  if (wide < short.length * 5.6 + 3) return null
  const p = toScreen(view, at(panel.centre))
  return <text class={`panel-number${light ? ' light' : ''}${small ? ' small-number' : ''}`} x={p.x} y={p.y + 4} text-anchor="middle">{small ? short : text}</text>
}

function FaultLine({ vein, high, low }: { readonly vein: VeinAt, readonly high: number, readonly low: number }) {
  const { point, direction, name } = vein.fault!
  if (Math.abs(direction.down) < 1e-6) return null
  const alongAt = (y: number) => point.along + direction.along * (-y - point.down) / direction.down
  return <path class="fault" d={`M${alongAt(high)} ${high}L${alongAt(low)} ${low}`}><title>{name}</title></path>
}

/** Where the number of a panel is written: from a little above its middle to a little below. */
function middleOf({ centre, corners }: Panel): readonly Point[] {
  const downs = corners.map(c => c.down), part = (Math.max(...downs) - Math.min(...downs)) * 0.28
  return [-part, 0, part].map(d => at({ along: centre.along, down: centre.down + d }))
}

/** A heading as it shows on the vein: between back and sill, or between its ribs where it goes up or down the dip; whichever is the larger. */
function outlineOf({ back, sill, left, right }: VeinAt['headings'][number]): readonly VeinPoint[] {
  const level = [...back, ...[...sill].reverse()], steep = [...left, ...[...right].reverse()]
  return areaOf(steep) > areaOf(level) ? steep : level
}

const areaOf = (corners: readonly VeinPoint[]): number => Math.abs(corners.reduce((sum, a, i) => {
  const b = corners[(i + 1) % corners.length]!
  return sum + a.along * b.down - b.along * a.down
}, 0)) / 2

/** Whether a point lies in a polygon: a ray from it crosses the edge an odd number of times. */
function inside(p: Point, corners: readonly Point[]): boolean {
  let odd = false
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length]!
    if ((a.y > p.y) !== (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y)) odd = !odd
  })
  return odd
}
