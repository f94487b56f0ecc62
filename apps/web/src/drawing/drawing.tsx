import type { ComponentChildren } from 'preact'
import { useEffect, useId, useMemo, useRef, useState } from 'preact/hooks'
import { placeLabels } from './labels.ts'
import { within } from './nearest.ts'
import { nextThing, wayOf } from './stepping.ts'
import { Mark, reach } from './symbols.tsx'
import type { SymbolName } from './symbols.tsx'
import type { Size } from './use-size.ts'
import { useSize } from './use-size.ts'
import { useZoom } from './use-zoom.ts'
import { toDrawing, toScreen, zoomed } from './view.ts'
import type { Point, View } from './view.ts'

/** Something on a drawing that can be pointed at and opened. */
export interface Thing {
  readonly id: string
  readonly at: Point
  readonly symbol: SymbolName
  /** What is written beside it; '' for nothing. */
  readonly label: string
  /** What a screen reader says. */
  readonly says: string
  /** Who gets a label first when room is short. */
  readonly weight: number
  /** Its label is drawn only from so many pixels a metre on; always when left out. */
  readonly labelFrom?: number
  /** Drawn soft: its place is not well known. */
  readonly soft?: boolean
  /** Degrees by which its mark is turned, clockwise: a strike that runs so. */
  readonly turn?: number
  /** It stands for an area: it is picked by pointing into the area, not at its middle. */
  readonly area?: boolean
}

interface Props {
  readonly name: string
  /** What stands in its head: the name as printed, and switches. */
  readonly head: ComponentChildren
  /** Pixels. */
  readonly height: number
  readonly view: View | undefined
  /** The view that shows all of it, for 'all' and the limits of the zoom. */
  readonly fitted: View | undefined
  readonly onView: (view: View) => void
  readonly onSize: (size: Size) => void
  readonly things: readonly Thing[]
  /** One thing when it was clear which was meant; several when they lie under one finger. */
  readonly onPick: (ids: readonly string[]) => void
  /** Where the finger is, in the drawing's coordinates, and the thing it is on. */
  readonly onPoint?: (p: Point | undefined, thing: string | undefined) => void
  /** When given, a tap gives its place and picks nothing: for drawing on the sheet. */
  readonly onTap?: ((p: Point) => void) | undefined
  /** The area that a point lies in, for drawings that have areas. */
  readonly areaAt?: (p: Point) => string | undefined
  readonly finger?: Point | undefined
  /** Lines and areas, in the drawing's own metres. */
  readonly children?: ComponentChildren
  /** What lies over them in pixels, under the marks. */
  readonly over?: (view: View, size: Size) => ComponentChildren
}

/** Things of this weight keep their size and are named at any scale. */
export const always = 100
const finger = 22 // a gloved finger covers this many pixels round its middle

/** A drawing at true scale that can be moved, enlarged, pointed at, stepped through with the arrow keys and picked from. */
export function Drawing(props: Props) {
  const { view, things, fitted } = props
  const svg = useRef<SVGSVGElement>(null), size = useSize(svg), hint = useId()
  const [current, setCurrent] = useState<string>()
  const down = useRef<Point>(undefined)
  useEffect(() => { if (size.width > 0) props.onSize(size) }, [size])
  useZoom(svg, view, fitted, props.onView)

  const shown = view && size.width > 0 ? { view, size } : undefined
  const screen = (t: Thing): Point => toScreen(view!, t.at)
  const labels = useMemo(() => shown ? placeLabels(things.filter(t => t.label !== '' && view!.k >= (t.labelFrom ?? 0)).map((t) => {
    const p = screen(t)
    return { id: t.id, x: p.x, y: p.y, reach: reach[t.symbol], width: t.label.length * 7.4 + 2, height: 15, weight: t.weight }
  }), size.width, size.height) : [], [things, view, size])
  const marks = useMemo(() => things.filter(t => t.area !== true), [things])
  const byId = useMemo(() => new Map(things.map(t => [t.id, t])), [things])

  const local = (event: MouseEvent): Point => {
    const box = svg.current!.getBoundingClientRect()
    return { x: event.clientX - box.left, y: event.clientY - box.top }
  }
  const point = (p: Point) => { const at = toDrawing(view!, p); props.onPoint?.(at, within(marks, screen, p, finger)[0]?.id ?? props.areaAt?.(at)) }
  const step = (id: string) => {
    setCurrent(id)
    const thing = byId.get(id)!
    props.onPoint?.(thing.at, id)
    svg.current!.querySelector<SVGElement>(`[data-id="${CSS.escape(id)}"]`)?.focus()
  }
  const zoomBy = (factor: number, about: Point = { x: size.width / 2, y: size.height / 2 }) =>
    props.onView(zoomed(view!, { k: factor, x: about.x * (1 - factor), y: about.y * (1 - factor) }))

  const onKeyDown = (event: KeyboardEvent) => {
    if (!view) return
    const here = current === undefined ? undefined : byId.get(current), way = wayOf(event.key)
    if (way && event.shiftKey) props.onView({ ...view, x: view.x - way.x * 60, y: view.y - way.y * 60 })
    else if (way) {
      const next = here ? nextThing(things, screen, screen(here), way)?.id : things[0]?.id
      if (next) step(next)
    } else if (event.key === '+' || event.key === '=') zoomBy(1.5, here ? screen(here) : undefined)
    else if (event.key === '-') zoomBy(1 / 1.5, here ? screen(here) : undefined)
    else if (event.key === '0' && fitted) props.onView(fitted)
    else if ((event.key === 'Enter' || event.key === ' ') && here) props.onPick([here.id])
    else return
    event.preventDefault()
  }

  // Seen from far off, marks are drawn smaller, so that a drift full of them is still a drift; what must not be missed stays as it is.
  const small = view ? Math.min(1, Math.max(0.5, view.k / 9)) : 1
  const tabStop = current !== undefined && byId.has(current) ? current : things[0]?.id
  return (
    <div class="view">
      <div class="view-head">
        {props.head}
        <div class="tools" role="group" aria-label={`${props.name}: size`}>
          <button type="button" class="tool" onClick={() => zoomBy(1.6)} aria-label="Larger">+</button>
          <button type="button" class="tool" onClick={() => zoomBy(1 / 1.6)} aria-label="Smaller">−</button>
          <button type="button" class="tool" onClick={() => fitted && props.onView(fitted)} aria-label="Show all">all</button>
        </div>
      </div>
      <div class="drawing" style={{ height: `${props.height}px` }}>
        <svg
          ref={svg}
          role="group"
          aria-label={props.name}
          aria-describedby={hint}
          onKeyDown={onKeyDown}
          tabIndex={-1}
          onPointerDown={(e) => { down.current = local(e) }}
          onPointerMove={(e) => { if (shown) point(local(e)) }}
          onPointerLeave={() => props.onPoint?.(undefined, undefined)}
          onClick={(e) => {
            const p = local(e)
            if (!shown || !down.current || Math.hypot(p.x - down.current.x, p.y - down.current.y) > 6) return
            point(p)
            if (props.onTap) { props.onTap(toDrawing(view!, p)); return }
            const under = within(marks, screen, p, finger)
            const area = under.length === 0 ? props.areaAt?.(toDrawing(view!, p)) : undefined
            if (area !== undefined) { setCurrent(area); props.onPick([area]); return }
            const clear = under.filter(t => Math.hypot(screen(t).x - p.x, screen(t).y - p.y) <= reach[t.symbol] + 2)
            const meant = e.detail === 0 || clear.length === 1 ? clear : under
            if (meant.length > 0) { setCurrent(meant[0]!.id); props.onPick(meant.map(t => t.id)) }
          }}
        >
          {shown && (
            <>
              <g class="metres" transform={`matrix(${view!.k} 0 0 ${-view!.k} ${view!.x} ${view!.y})`}>{props.children}</g>
              {props.over?.(view!, size)}
              {props.finger && <Finger at={toScreen(view!, props.finger)} size={size} />}
              {things.map((t) => {
                const p = screen(t)
                return (
                  <g
                    key={t.id}
                    data-id={t.id}
                    role="button"
                    tabIndex={t.id === tabStop ? 0 : -1}
                    aria-label={t.says}
                    class={t.soft ? 'thing soft-place' : 'thing'}
                    transform={`translate(${p.x} ${p.y})`}
                    onFocus={() => { setCurrent(t.id); props.onPoint?.(t.at, t.id) }}
                  >
                    <circle r={reach[t.symbol] + 5} class="halo" />
                    <g transform={`rotate(${t.turn ?? 0}) scale(${t.weight >= always ? 1 : small})`}><Mark name={t.symbol} /></g>
                  </g>
                )
              })}
              <g class="labels" aria-hidden="true">{labels.map(l => (
                <text
                  key={l.id}
                  x={l.x + 1}
                  y={l.y + 12}
                  class={byId.get(l.id)?.symbol === 'name' ? 'on-line' : undefined}
                  onClick={(e) => { e.stopPropagation(); setCurrent(l.id); props.onPick([l.id]) }}
                >{byId.get(l.id)?.label}
                </text>
              ))}
              </g>
            </>
          )}
        </svg>
        <p id={hint} class="off-screen">Arrow keys step from thing to thing, Enter opens one, plus and minus enlarge and reduce, 0 shows all, Shift with an arrow moves the sheet.</p>
      </div>
    </div>
  )
}

const Finger = ({ at, size }: { readonly at: Point, readonly size: Size }) => (
  <g class="finger" aria-hidden="true">
    <path d={`M${at.x} 0V${at.y - 9}M${at.x} ${at.y + 9}V${size.height}`} />
    <circle cx={at.x} cy={at.y} r={9} />
  </g>
)
