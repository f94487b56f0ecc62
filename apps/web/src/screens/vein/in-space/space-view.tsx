import type { LostPart, VeinAt, VeinSheet, Workings } from '@lodebook/answers'
import { useEffect, useId, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks'
import { open, openAnswer, openEntry } from '../../../drawer/drawer-state.ts'
import type { Page } from '../../../drawer/drawer-state.ts'
import { ScaleBarDrawn } from '../../../drawing/margin-parts.tsx'
import { InlineMark, symbolOf } from '../../../drawing/symbols.tsx'
import { wind } from '../../../drawing/turn.ts'
import { useSize } from '../../../drawing/use-size.ts'
import type { Point } from '../../../drawing/view.ts'
import { book } from '../../../link/desk.ts'
import { ChoiceRow } from '../../../shell/choice-row.tsx'
import { ground } from '../../../shell/ground.ts'
import { azimuthText, decimal } from '../../../words/number.ts'
import { axesOf, enlargedBy, fit, projector } from './camera.ts'
import type { Camera } from './camera.ts'
import { drawnPainter } from './drawn-painter.ts'
import { hits } from './hit.ts'
import { keyTurn } from './key-turn.ts'
import { looksOf } from './looks.ts'
import type { Painter } from './looks.ts'
import { sceneOf } from './scene.ts'
import { spaceLabels } from './space-labels.ts'
import { useOrbit } from './use-orbit.ts'
import { tapeUnit } from '../../../words/tape-unit.ts'
import { toggled } from '../../../drawing/toggled.ts'

const ways = ['solids', 'drawing'] as const
type Way = typeof ways[number]
const finger = 22, settle = 140 // pixels; milliseconds of rest before names are written
const hiddenAtFirst: readonly string[] = ['structure', 'width', 'air', 'ground', 'photo', 'density', 'tie']

/** The scene on a canvas that is turned, moved, enlarged and picked from; as solids where the device can, else as a drawing of ours. */
export function SpaceView({ workings, vein, sheet, lost }: {
  readonly workings: Workings
  readonly vein: VeinAt | undefined
  readonly sheet: VeinSheet | undefined
  readonly lost: LostPart | undefined
}) {
  const scene = useMemo(() => sceneOf(workings, vein, sheet, lost), [workings, vein, sheet, lost])
  const [way, setWay] = useState<Way>('solids'), [can, setCan] = useState(true), [hidden, setHidden] = useState<ReadonlySet<string>>(new Set(hiddenAtFirst))
  const [camera, setCamera] = useState<Camera>(), [resting, setResting] = useState(true), [lit, setLit] = useState<string>()
  const box = useRef<HTMLDivElement>(null), canvas = useRef<HTMLCanvasElement>(null), room = useSize(box), hint = useId()
  const painter = useRef<Painter>(undefined), now = useRef<Camera>(undefined), asked = useRef(0), rest = useRef(0)
  const along = vein ? Math.atan2(vein.alongAxis[0], vein.alongAxis[1]) * 180 / Math.PI : 0, acrossVein = vein ? along - 62 : 315
  const on = ground.value
  const all = () => fit(scene.bounds, room, acrossVein, 24)

  const paint = () => {
    if (asked.current !== 0) return
    asked.current = requestAnimationFrame(() => {
      asked.current = 0
      if (now.current && room.width > 0) painter.current?.paint(now.current, room)
    })
  }
  const look = (next: Camera) => {
    now.current = next
    paint()
    setResting(false)
    clearTimeout(rest.current)
    rest.current = setTimeout(() => { setCamera(now.current); setResting(true) }, settle) as unknown as number
  }
  useLayoutEffect(() => {
    if (!canvas.current || room.width === 0) return
    const looks = looksOf(canvas.current)
    if (way === 'drawing') { painter.current = drawnPainter(canvas.current, scene, hidden, looks); paint(); return }
    if (!hasGraphics()) { setCan(false); setWay('drawing'); return }
    let gone = false
    void import('./solid-painter.ts').then(({ solidPainter }) => {
      if (gone) return
      try { painter.current = solidPainter(canvas.current!, scene, hidden, looks); paint() } catch { setCan(false); setWay('drawing') }
    }, () => { setCan(false); setWay('drawing') })
    return () => { gone = true; painter.current?.end(); painter.current = undefined }
  }, [way, scene, hidden, on, room.width > 0])
  useEffect(() => { if (room.width > 0 && !now.current) { now.current = all(); setCamera(now.current) } paint() }, [room, scene])

  const visible = scene.marks.filter(m => !hidden.has(m.kind))
  const under = (p: Point) => now.current ? hits(visible, projector(now.current, room), p, finger) : []
  const pageOf = (id: string): Page => {
    const station = id.startsWith('station:') ? workings.stations.find(s => `station:${s.name}` === id) : undefined
    return station ? { is: 'answer', answer: station.answer } : { is: 'entry', id }
  }
  const pick = (found: readonly { readonly id: string, readonly says: string }[]) => {
    if (found.length === 0) return
    setLit(found[0]!.id)
    const page = pageOf(found[0]!.id)
    if (found.length > 1) open({ is: 'several', title: 'Which of these?', of: found.slice(0, 12).map(f => ({ label: f.says, page: pageOf(f.id) })) })
    else if (page.is === 'entry') openEntry(page.id)
    else if (page.is === 'answer') openAnswer(page.answer)
  }
  useOrbit(box, {
    now: () => now.current!, onCamera: look,
    onTap: (p) => { const found = under(p), clear = found.filter(f => f.far <= 7); pick(clear.length === 1 ? clear : found) },
    onHover: (p) => { const [first] = p ? under(p) : []; setLit(first?.id) },
  })
  const step = (by: 1 | -1) => {
    const order = visible.flatMap(m => m.ids)
    if (order.length === 0) return
    setLit(order[((lit === undefined ? -by : order.indexOf(lit)) + by + order.length) % order.length])
  }
  const onKeyDown = (e: KeyboardEvent) => {
    if (!now.current || e.target !== box.current) return
    const next = keyTurn(now.current, e.key, e.shiftKey)
    if (next) look(next)
    else if (e.key === '0') look(all())
    else if (e.key === 'n' || e.key === 'N') step(1)
    else if (e.key === 'p' || e.key === 'P') step(-1)
    else if (e.key === 'Enter' && lit !== undefined) pick([{ id: lit, says: saysOf(lit) }])
    else return
    e.preventDefault()
  }
  const saysOf = (id: string): string => { for (const m of scene.marks) { const i = m.ids.indexOf(id); if (i >= 0) return m.says[i]! } return '' }
  const placeOf = (id: string) => { for (const m of scene.marks) { const i = m.ids.indexOf(id); if (i >= 0) return m.at[i]! } return undefined }
  const toggle = (kind: string) => setHidden(toggled(hidden, kind))
  const labels = useMemo(() => camera && room.width > 0 ? spaceLabels(workings, projector(camera, room), camera.k, room) : [], [camera, room, workings])
  const mark = lit !== undefined && now.current && resting ? placeOf(lit) : undefined, markAt = mark && projector(now.current!, room)(mark)
  const view = (azimuth: number, tilt: number) => () => { look({ ...fit(scene.bounds, room, azimuth, tilt) }) }

  return (
    <section class="sheet" aria-label="The mine in three dimensions">
      <div class="sheet-body">
        <div class="view">
          <div class="view-head">
            <p><b>In space</b> {camera ? `looking ${wind(camera.azimuth)} (${azimuthText(camera.azimuth)}), ${decimal(Math.abs(camera.tilt), 0)}° ${camera.tilt < 0 ? 'up' : 'down'}` : ''}; no perspective, so lengths keep their scale</p>
            <div class="tools" role="group" aria-label="Size and way of looking">
              <button type="button" class="tool wide" onClick={view(0, 89.9)}>above</button>
              {vein && <button type="button" class="tool wide" onClick={view(along - 90, 0)}>side</button>}
              {vein && <button type="button" class="tool wide" onClick={view(along, 0)}>end</button>}
              <button type="button" class="tool" aria-label="Larger" onClick={() => now.current && look(enlargedBy(now.current, 1.5))}>+</button>
              <button type="button" class="tool" aria-label="Smaller" onClick={() => now.current && look(enlargedBy(now.current, 1 / 1.5))}>−</button>
              <button type="button" class="tool" aria-label="Show all" onClick={() => look(all())}>all</button>
            </div>
          </div>
          <div ref={box} class="space" tabIndex={0} role="application" aria-label="The mine in three dimensions" aria-describedby={hint} onKeyDown={onKeyDown}>
            <canvas key={way} ref={canvas} aria-hidden="true" />
            <svg class="space-over" aria-hidden="true">
              {resting && labels.map(l => <text key={`${l.text}${l.x}`} x={l.x + 1} y={l.y + 12} class={l.heading ? 'on-line' : undefined}>{l.text}</text>)}
              {markAt && <circle class="space-lit" cx={markAt.x} cy={markAt.y} r="11" />}
              {camera && resting && <NorthInSpace camera={camera} height={room.height} />}
            </svg>
            <p id={hint} class="off-screen">Arrow keys turn the mine, with Shift they move it, plus and minus enlarge and reduce, 0 shows all, N and P go to the next and the one before, Enter opens it.</p>
          </div>
          <p class="finger-says" aria-live="polite">{lit !== undefined ? saysOf(lit) : <span class="soft">Turn it with a finger or the mouse, move it with two fingers or Shift, tap a mark to open it.</span>}</p>
        </div>
        <aside class="margin" aria-label="Margin of the sheet">
          <h2>{book.value?.name || 'In space'}</h2>
          {camera && <ScaleBarDrawn k={camera.k} room={170} unit={tapeUnit()} />}
          {can ? <ChoiceRow label="Shown as" of={ways} value={way} onChoose={setWay} show /> : <p class="soft small">This device gives no graphics context, so it is shown as a drawing.</p>}
          <fieldset class="legend">
            <legend class="off-screen">What is drawn</legend>
            <Layer name="Passages" shown={!hidden.has('passages')} onToggle={() => toggle('passages')} n={scene.passages.length} />
            {scene.sheets.map(s => <Layer key={s.is} name={s.name} shown={!hidden.has(s.is)} onToggle={() => toggle(s.is)} />)}
            {scene.lines.length > 0 && <Layer name="Lost part: twenty cases on a plan and a section, and the heading" shown={!hidden.has('lost')} onToggle={() => toggle('lost')} />}
            {scene.marks.map(m => (
              <label key={m.kind}><input type="checkbox" checked={!hidden.has(m.kind)} onChange={() => toggle(m.kind)} /><InlineMark name={m.kind === 'stations' ? 'station' : symbolOf(m.kind, '')} /><span>{m.name}</span><span class="n">{m.at.length}</span></label>
            ))}
          </fieldset>
        </aside>
      </div>
    </section>
  )
}

/** Whether the device gives a graphics context at all; asked before the code for solids is read. */
const hasGraphics = (): boolean => {
  const context = document.createElement('canvas').getContext('webgl2')
  context?.getExtension('WEBGL_lose_context')?.loseContext()
  return context !== null
}

const Layer = ({ name, shown, onToggle, n }: { readonly name: string, readonly shown: boolean, readonly onToggle: () => void, readonly n?: number }) => (
  <label><input type="checkbox" checked={shown} onChange={onToggle} /><span>{name}</span>{n !== undefined && <span class="n">{n}</span>}</label>
)

/** Which way grid north and up lie as one looks now. */
function NorthInSpace({ camera, height }: { readonly camera: Camera, readonly height: number }) {
  const { right, up } = axesOf(camera), long = 30
  const tip = (axis: 1 | 2) => ({ x: right[axis] * long, y: -up[axis] * long })
  return (
    <g class="space-north" transform={`translate(46 ${height - 46})`}>
      {([['N', tip(1)], ['up', tip(2)]] as const).map(([name, t]) => Math.hypot(t.x, t.y) > 6 && <g key={name}><path d={`M0 0L${t.x} ${t.y}`} /><text x={t.x * 1.35} y={t.y * 1.35 + 4} text-anchor="middle">{name}</text></g>)}
    </g>
  )
}
