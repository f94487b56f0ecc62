import type { Grade, Next, VeinAt } from '@lodebook/answers'
import type { VeinPoint } from '@lodebook/reckon'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { openAnswer } from '../../drawer/drawer-state.ts'
import { Drawing } from '../../drawing/drawing.tsx'
import type { Thing } from '../../drawing/drawing.tsx'
import { fitTogether, layOut } from '../../drawing/layout.ts'
import { useSize } from '../../drawing/use-size.ts'
import type { Size } from '../../drawing/use-size.ts'
import { boundsOf, toScreen } from '../../drawing/view.ts'
import type { Bounds, Point, View } from '../../drawing/view.ts'
import { ground } from '../../shell/ground.ts'
import { moneyText as money } from '../../words/crew-value.ts'

const nowhere: Bounds = { minX: -5, minY: -5, maxX: 5, maxY: 5 }
const at = ({ along, down }: VeinPoint): Point => ({ x: along, y: -down })
const path = (points: readonly VeinPoint[]): string => points.length === 0 ? '' : `M${points.map(at).map(p => `${p.x.toFixed(2)} ${p.y.toFixed(2)}`).join('L')}Z`

/** The long section with a numbered flag where each look would be taken; a flag opens to what it would cost and be worth. */
export function FlagSheet({ next, vein, grade }: { readonly next: Next, readonly vein: VeinAt, readonly grade: Grade }) {
  const [view, setView] = useState<View>(), [size, setSize] = useState<Size>(), [says, setSays] = useState('')
  const flags = useMemo(() => next.looks.filter(l => l.at).slice(0, 20), [next])
  const things = useMemo((): readonly Thing[] => [
    ...flags.map((l): Thing => ({
      id: `look:${l.rank}`, at: at(l.at!), symbol: 'name', label: '', weight: 100 - l.rank,
      says: `Flag ${l.rank}, ${l.does}, ${l.where}: worth ${money(l.worth.value, next.currency)}, costs ${money(l.cost, next.currency)}`,
    })),
    ...vein.stations.map((s): Thing => ({ id: `station:${s.name}`, at: at(s.at), symbol: 'station', label: s.name, weight: -1, labelFrom: 16, says: `Station ${s.name}` })),
  ], [flags, vein, next])
  const bounds = useMemo(() => boundsOf(grade.panels.flatMap(p => p.corners).map(at)) ?? nowhere, [grade])
  const column = useRef<HTMLDivElement>(null), room = useSize(column)
  const laid = useMemo(() => layOut([bounds], room.width, innerHeight, ground.value === 'print'), [bounds, room.width, ground.value])
  const fitted = useMemo(() => size && fitTogether([bounds], [size], laid.scale)?.[0], [bounds, size, laid])
  useEffect(() => setView(fitted), [fitted])
  const pick = (ids: readonly string[]) => {
    const look = flags.find(l => ids.includes(`look:${l.rank}`))
    if (look) openAnswer(look.worth)
  }
  return (
    <section class="sheet" aria-label="Long section with flags">
      <div ref={column}>
        <Drawing
          name="Long section with a flag for each look"
          height={laid.heights[0]!}
          view={view}
          fitted={fitted}
          onView={setView}
          onSize={setSize}
          things={things}
          onPick={pick}
          head={<p><b>{vein.name}, laid flat</b> flags numbered by worth above cost</p>}
          onPoint={(_, id) => setSays(things.find(t => t.id === id)?.says ?? '')}
          over={v => <g aria-hidden="true">{[...flags].reverse().map(l => <Flag key={l.rank} rank={l.rank} at={toScreen(v, at(l.at!))} strong={l.net > 0} />)}</g>}
        >
          {grade.panels.map(p => <path key={p.name} class="blank-panel" d={path(p.corners)} />)}
          {vein.headings.filter(h => h.back.length > 1).map(h => <path key={h.name} class="passage" d={path([...h.back, ...[...h.sill].reverse()])}><title>{h.name}</title></path>)}
        </Drawing>
        <p class="finger-says" aria-live="off">{says || <span class="soft">Point at a flag to read it; tap to open it. A filled flag is worth more than it costs.</span>}</p>
      </div>
    </section>
  )
}

const Flag = ({ rank, at: p, strong }: { readonly rank: number, readonly at: Point, readonly strong: boolean }) => (
  <g class={strong ? 'flag strong' : 'flag'} transform={`translate(${p.x.toFixed(1)} ${p.y.toFixed(1)})`}>
    <path d="M0 0V-22" /><path class="cloth" d="M0 -36H20V-20H0Z" /><text x={10} y={-24} text-anchor="middle">{rank}</text>
  </g>
)
