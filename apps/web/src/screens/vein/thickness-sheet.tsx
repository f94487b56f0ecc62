import type { LostPart, VeinAt, VeinSheet, Workings } from '@lodebook/answers'
import { isAnswer } from '@lodebook/answers'
import type { VeinPoint } from '@lodebook/reckon'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { open, openAnswer } from '../../drawer/drawer-state.ts'
import { Figure } from '../../drawer/figure.tsx'
import { Drawing } from '../../drawing/drawing.tsx'
import type { Thing } from '../../drawing/drawing.tsx'
import { SectionTicks } from '../../drawing/grid.tsx'
import { fitTogether, layOut } from '../../drawing/layout.ts'
import { ScaleBarDrawn } from '../../drawing/margin-parts.tsx'
import { InlineMark } from '../../drawing/symbols.tsx'
import { useSize } from '../../drawing/use-size.ts'
import type { Size } from '../../drawing/use-size.ts'
import { boundsOf } from '../../drawing/view.ts'
import type { Point, View } from '../../drawing/view.ts'
import { book } from '../../link/desk.ts'
import { crewText, crewUnit } from '../../words/crew-value.ts'
import { azimuthText, counted } from '../../words/number.ts'
import { NotEnoughShown } from '../../words/not-enough.tsx'
import { line } from './ground.tsx'
import { WidthProfile } from './width-profile.tsx'

const flat = ({ along, down }: VeinPoint): Point => ({ x: along, y: -down })
const nowhere = { minX: -5, minY: -5, maxX: 5, maxY: 5 }

/** The vein laid flat: where it was taped, what is in it, and the edge at which the lost part begins; below it the width against the way along. */
export function ThicknessSheet({ sheet, vein, lost, workings }: {
  readonly sheet: VeinSheet
  readonly vein: VeinAt
  readonly lost: LostPart | undefined
  readonly workings: Workings
}) {
  const [word, setWord] = useState(''), [lit, setLit] = useState<string>(), [view, setView] = useState<View>(), [size, setSize] = useState<Size>()
  const { units } = book.value!
  const chosen = sheet.materials.find(m => m.word === word), here = useMemo(() => new Set(chosen?.at.map(a => a.entry)), [chosen])
  const inVein = useMemo(() => inTheVein(vein, workings), [vein, workings])
  const things = useMemo((): readonly Thing[] => {
    const taped = new Set(vein.widths.map(w => w.entry))
    return [
      ...inVein.stations.map((s): Thing => ({ id: `station:${s.name}`, at: flat(s.at), symbol: 'station', label: s.name, weight: 5, labelFrom: 6, says: `Station ${s.name}` })),
      ...vein.widths.map((w): Thing => ({ id: w.entry, at: flat(w.at), symbol: here.has(w.entry) ? 'width-here' : 'width', label: crewText(w.width, 'm', units, 0.01, true), labelFrom: 18, weight: here.has(w.entry) ? 60 : 20, says: `${w.answer.sentence}${here.has(w.entry) ? ` ${word} is named here.` : ''}` })),
      ...(chosen?.at ?? []).filter(a => !taped.has(a.entry)).map((a): Thing => ({ id: a.entry, at: flat(a.at), symbol: 'sample', label: '', weight: 10, says: `${word} is named here` })),
    ]
  }, [vein, here, units])
  const bounds = useMemo(() => {
    const edge = lost?.edge ? nearEdge(lost.edge, vein) : []
    return boundsOf([...vein.widths.map(w => w.at), ...inVein.stations.map(s => s.at), ...edge].map(flat)) ?? nowhere
  }, [vein, lost])
  const column = useRef<HTMLDivElement>(null), room = useSize(column)
  const laid = useMemo(() => layOut([bounds], room.width, innerHeight * 0.8, false), [bounds, room.width])
  const fitted = useMemo(() => size && fitTogether([bounds], [size])?.[0], [bounds, size])
  useEffect(() => setView(fitted), [fitted])
  if (!isAnswer(sheet.thickness.answer)) return <NotEnoughShown answer={sheet.thickness.answer} />
  const answerOf = (id: string) => vein.widths.find(w => w.entry === id)?.answer
  const pick = (ids: readonly string[]) => {
    const pages = ids.filter(id => !id.startsWith('station:')).map((id) => { const answer = answerOf(id); return { label: things.find(t => t.id === id)!.says, page: answer ? { is: 'answer' as const, answer } : { is: 'entry' as const, id } } })
    if (pages.length === 1) open(pages[0]!.page)
    else if (pages.length > 1) open({ is: 'several', title: 'Which of these?', of: pages.slice(0, 12) })
  }
  return (
    <>
      <p class="prose"><Figure answer={sheet.thickness.answer}>{sheet.thickness.answer.sentence}</Figure></p>
      {sheet.thickness.swells && <p class="prose"><Figure answer={sheet.thickness.swells}>{sheet.thickness.swells.sentence}</Figure></p>}
      <section class="sheet" aria-label="Widths along the vein">
        <div class="sheet-body">
          <div ref={column}>
            <Drawing
              name="Widths on the vein"
              height={Math.max(240, laid.heights[0]!)}
              view={view}
              fitted={fitted}
              onView={setView}
              onSize={setSize}
              things={things}
              onPick={pick}
              onPoint={(_, id) => setLit(id)}
              finger={lit === undefined ? undefined : things.find(t => t.id === lit)?.at}
              head={<p><b>{vein.name}, laid flat</b> strike {azimuthText(vein.strike.value)} to the right; distances down the dip are true</p>}
              over={(v, s) => <SectionTicks view={v} size={s} along="along the vein" up="down the dip" downward />}
            >
              {inVein.headings.map(h => <path key={h.name} class="passage" d={line([...h.back, ...[...h.sill].reverse()].map(flat), true)}><title>{h.name}</title></path>)}
              {vein.workedOut.map(w => <path key={w.entry} class="gone" fill="none" d={line(w.corners.map(flat), true)}><title>{w.name}, worked out</title></path>)}
              {lost?.edge && (
                <>
                  <path class="lost-band" d={line([...lost.edge.low, ...[...lost.edge.high].reverse()].map(flat), true)}><title>Edge of the lost part, four cases in five</title></path>
                  {lost.edge.cases.map((c, i) => <path key={i} class="lost-case" d={line(c.map(flat))} />)}
                  <path class="lost-middle" d={line(lost.edge.middle.map(flat))} />
                </>
              )}
              {vein.fault && <FaultLine vein={vein} high={bounds.maxY + 6} low={bounds.minY - 6} />}
              {sheet.lie.breakLine && <path class="break-line" d={line(sheet.lie.breakLine.map(flat))}><title>It breaks here</title></path>}
            </Drawing>
            {view && size && (
              <WidthProfile
                vein={vein}
                thickness={sheet.thickness}
                view={view}
                width={size.width}
                lit={lit}
                onPoint={setLit}
                onPick={id => pick([id])}
                here={here}
              />
            )}
            <p class="finger-says" aria-live="off">{things.find(t => t.id === lit)?.says ?? <span class="soft">Point at a width to see it on both drawings. Tap to open how it was taped.</span>}</p>
          </div>
          <aside class="margin" aria-label="Margin of the sheet">
            {view && <ScaleBarDrawn k={view.k} room={170} unit={crewUnit('m', units) === 'ft' ? 'ft' : 'm'} />}
            <div>
              <label class="label" for="material">Mark where this is named</label>
              <select id="material" class="box" value={word} onChange={e => setWord(e.currentTarget.value)}>
                <option value="">nothing marked</option>
                {sheet.materials.map(m => <option key={m.word} value={m.word}>{m.word}, {counted(m.at.length, 'place')}</option>)}
              </select>
              {chosen && <p><Figure answer={chosen.answer}>{chosen.answer.sentence}</Figure></p>}
            </div>
            <ul class="class-list">
              <li><InlineMark name="width" /><span>Widths taped</span><span class="n">{vein.widths.length}</span></li>
              {chosen && <li><InlineMark name="width-here" /><span>with {word}</span><span class="n">{vein.widths.filter(w => here.has(w.entry)).length}</span></li>}
            </ul>
            <ul class="line-key" aria-label="Lines">
              {vein.fault && <li><svg width="34" height="12" aria-hidden="true"><path class="fault" d="M0 6H34" /></svg>{vein.fault.name}</li>}
              {lost?.edge && <li><svg width="34" height="16" aria-hidden="true"><path class="lost-band" d="M0 1H34V15H0Z" /></svg>where the lost part begins, seen square to the vein: four cases in five</li>}
              {sheet.lie.breakLine && <li><svg width="34" height="12" aria-hidden="true"><path class="break-line" d="M0 6H34" /></svg>where it breaks</li>}
            </ul>
            <button type="button" class="fig" onClick={() => openAnswer(sheet.lie.answer as Parameters<typeof openAnswer>[0])} hidden={!isAnswer(sheet.lie.answer)}>One plane or two</button>
          </aside>
        </div>
      </section>
    </>
  )
}

/** The headings underground that keep to the vein for all their length, with their stations. */
function inTheVein(vein: VeinAt, workings: Workings): Pick<VeinAt, 'headings' | 'stations'> {
  const near = new Set(vein.stations.map(s => s.name))
  const kept = workings.headings.filter(h => h.sort !== 'surface' && h.stations.every(s => near.has(s)))
  const [names, stations] = [new Set(kept.map(h => h.name)), new Set(kept.flatMap(h => h.stations))]
  return { headings: vein.headings.filter(h => names.has(h.name)), stations: vein.stations.filter(s => stations.has(s.name)) }
}

/** The part of the edge that lies level with what was seen. */
function nearEdge(edge: NonNullable<LostPart['edge']>, vein: VeinAt): readonly VeinPoint[] {
  const downs = vein.widths.map(w => w.at.down)
  if (downs.length === 0) return edge.middle
  const [low, high] = [Math.min(...downs) - 3, Math.max(...downs) + 3]
  return [...edge.low, ...edge.high].filter(p => p.down >= low && p.down <= high)
}

function FaultLine({ vein, high, low }: { readonly vein: VeinAt, readonly high: number, readonly low: number }) {
  const { point, direction, name } = vein.fault!
  if (Math.abs(direction.down) < 1e-6) return null
  const alongAt = (y: number) => point.along + direction.along * (-y - point.down) / direction.down
  return <path class="fault" d={`M${alongAt(high)} ${high}L${alongAt(low)} ${low}`}><title>{name}</title></path>
}
