import type { Answer } from '@lodebook/answers'
import type { ComponentChildren } from 'preact'
import { useRef, useState } from 'preact/hooks'
import { open, openAnswer } from '../drawer/drawer-state.ts'
import { marksOf, placeOn } from './axis.ts'
import type { Axis } from './axis.ts'
import { useSize } from './use-size.ts'

export type Dot = 'full' | 'open' | 'square' | 'cross' | 'bad'

/** A point that can be read, stepped to and opened. */
export interface ChartPoint {
  readonly id: string
  readonly x: number
  readonly y: number
  readonly dot: Dot
  readonly says: string
  /** Written beside it. */
  readonly label?: string
  readonly answer: Answer
}

/** From values to pixels, and the edges of the room within the axes. */
export interface Scales {
  readonly x: (value: number) => number
  readonly y: (value: number) => number
  readonly left: number
  readonly right: number
  readonly top: number
  readonly base: number
}

const room = { left: 58, right: 14, top: 12, bottom: 44 }
const finger = 24 // a gloved finger covers this many pixels round its middle

/** Points on two axes. Point at one to read it, tap to open it; arrow keys step from one to the next. */
export function Chart({ name, x, y, points, height = 300, children }: {
  readonly name: string
  readonly x: Axis
  readonly y: Axis
  readonly points: readonly ChartPoint[]
  readonly height?: number
  /** Lines and areas under the points. */
  readonly children?: (scales: Scales) => ComponentChildren
}) {
  const box = useRef<HTMLDivElement>(null), svg = useRef<SVGSVGElement>(null), { width } = useSize(box)
  const [current, setCurrent] = useState<string>()
  const right = width - room.right, base = height - room.bottom
  const s: Scales = { x: placeOn(x, room.left, right), y: placeOn(y, base, room.top), left: room.left, right, top: room.top, base }
  const order = [...points].sort((a, b) => a.x - b.x || a.y - b.y)
  const near = (event: MouseEvent) => {
    const frame = svg.current!.getBoundingClientRect(), at = { x: event.clientX - frame.left, y: event.clientY - frame.top }
    const away = (p: ChartPoint) => Math.hypot(s.x(p.x) - at.x, s.y(p.y) - at.y)
    return points.filter(p => away(p) <= finger).sort((a, b) => away(a) - away(b))
  }
  const pick = (found: readonly ChartPoint[]) => {
    const [first, second] = found
    if (!first) return
    const close = second && Math.hypot(s.x(first.x) - s.x(second.x), s.y(first.y) - s.y(second.y)) < 6
    if (!close) openAnswer(first.answer)
    else open({ is: 'several', title: 'Which of these?', of: found.slice(0, 8).map(p => ({ label: p.says, page: { is: 'answer', answer: p.answer } })) })
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const at = order.findIndex(p => p.id === current), step = event.key === 'ArrowRight' || event.key === 'ArrowUp' ? 1 : event.key === 'ArrowLeft' || event.key === 'ArrowDown' ? -1 : 0
    if (step !== 0) {
      const next = order[Math.max(0, Math.min(order.length - 1, at + step))]
      if (next) { setCurrent(next.id); svg.current!.querySelector<SVGElement>(`[data-id="${CSS.escape(next.id)}"]`)?.focus() }
    } else if ((event.key === 'Enter' || event.key === ' ') && at >= 0) openAnswer(order[at]!.answer)
    else return
    event.preventDefault()
  }
  const said = points.find(p => p.id === current)?.says, tabStop = said === undefined ? order[0]?.id : current
  return (
    <div ref={box} class="chart">
      {width > 0 && (
        <svg
          ref={svg}
          viewBox={`0 0 ${width} ${height}`}
          height={height}
          role="group"
          aria-label={name}
          onKeyDown={onKeyDown}
          onPointerMove={(e) => { const [one] = near(e); if (one) setCurrent(one.id) }}
          onClick={(e) => { const found = near(e); if (found[0]) setCurrent(found[0].id); pick(found) }}
        >
          <g aria-hidden="true">
            {marksOf(y, base - room.top).map(m => <g key={m.at}><path class="grid-line" d={`M${room.left} ${s.y(m.at)}H${right}`} /><text x={room.left - 7} y={s.y(m.at) + 4} text-anchor="end">{m.text}</text></g>)}
            {marksOf(x, right - room.left).map(m => <g key={m.at}><path class="grid-line" d={`M${s.x(m.at)} ${room.top}V${base}`} /><text x={s.x(m.at)} y={base + 17} text-anchor="middle">{m.text}</text></g>)}
            <path class="axis" d={`M${room.left} ${room.top}V${base}H${right}`} />
            <text class="axis-name" x={right} y={height - 6} text-anchor="end">{x.label}</text>
            <text class="axis-name" transform={`translate(13 ${room.top}) rotate(-90)`} text-anchor="end">{y.label}</text>
            {children?.(s)}
          </g>
          {points.map(p => (
            <g
              key={p.id}
              data-id={p.id}
              role="button"
              tabIndex={p.id === tabStop ? 0 : -1}
              aria-label={p.says}
              class={p.id === current ? 'chart-point current' : 'chart-point'}
              transform={`translate(${s.x(p.x)} ${s.y(p.y)})`}
              onFocus={() => setCurrent(p.id)}
            >
              <circle r="11" class="halo" />
              <DotDrawn dot={p.dot} />
              {p.label !== undefined && <text class="point-name" x={s.x(p.x) > right - 60 ? -9 : 9} y={s.y(p.y) < 40 ? 16 : -7} text-anchor={s.x(p.x) > right - 60 ? 'end' : 'start'}>{p.label}</text>}
            </g>
          ))}
        </svg>
      )}
      <p class="finger-says">{said ?? <span class="soft">Point at a mark to read it; tap to open it down to its entries.</span>}</p>
    </div>
  )
}

/** A mark: full, open, square, a cross, or bad (accent and a ring, so that colour is not alone). */
export function DotDrawn({ dot }: { readonly dot: Dot }) {
  switch (dot) {
    case 'full': return <circle class="dot-full" r="4" />
    case 'open': return <circle class="dot-open" r="4.2" />
    case 'square': return <rect class="dot-open" x="-4" y="-4" width="8" height="8" />
    case 'cross': return <path class="dot-line" d="M-4.5 -4.5 4.5 4.5M-4.5 4.5 4.5 -4.5" />
    case 'bad': return <><circle class="dot-ring" r="8.5" /><circle class="dot-bad" r="4.4" /></>
  }
}

/** A line through points of a chart. */
export const lineThrough = (s: Scales, points: readonly (readonly [number, number])[]): string => points.length === 0 ? '' : `M${points.map(([a, b]) => `${s.x(a).toFixed(1)} ${s.y(b).toFixed(1)}`).join('L')}`
