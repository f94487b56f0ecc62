import type { Today, Workings } from '@lodebook/answers'
import { book } from '../../link/desk.ts'
import { crewText } from '../../words/crew-value.ts'

const width = 720, height = 420, side = 26

/** The plan on one page: headings by their outline, hazards by number as in the list, station names where there is room, north and a scale. */
export function RescuePlan({ workings, today }: { readonly workings: Workings, readonly today: Today }) {
  const headings = workings.headings.filter(h => h.sort !== 'surface'), all = headings.flatMap(h => [...h.left, ...h.right])
  if (all.length === 0) return null
  const [easts, norths] = [all.map(p => p[0]), all.map(p => p[1])]
  const [e0, e1, n0, n1] = [Math.min(...easts), Math.max(...easts), Math.min(...norths), Math.max(...norths)]
  const k = Math.min((width - 2 * side) / Math.max(e1 - e0, 1), (height - 2 * side) / Math.max(n1 - n0, 1))
  const ox = (width - k * (e1 - e0)) / 2, oy = (height - k * (n1 - n0)) / 2
  const x = (e: number) => ox + (e - e0) * k, y = (n: number) => height - oy - (n - n0) * k
  const outline = (h: Workings['headings'][number]) =>
    `${[...h.left, ...[...h.right].reverse()].map((p, i) => `${i === 0 ? 'M' : 'L'}${x(p[0]).toFixed(1)} ${y(p[1]).toFixed(1)}`).join('')}Z`
  const spots = today.hazards.map((h, i) => ({ h, i, at: workings.placed.find(p => p.entry === h.entry)?.point }))
  const portal = workings.stations.find(s => s.name === today.way?.portal)?.point
  const named = headings.flatMap(h => [h.stations[0]!, h.stations.at(-1)!]), units = book.value?.units ?? 'metres and g/t'
  const bar = units === 'metres and g/t' ? 20 : 18.288
  const north = workings.norths.trueNorth * Math.PI / 180
  return (
    <figure class="rescue-plan">
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={`Plan of the workings with ${spots.length} hazards numbered as in the list`}>
        {headings.map(h => <path key={h.entry} class="passage" d={outline(h)} />)}
        {workings.stations.filter(s => named.includes(s.name)).map(s => <text key={s.name} x={x(s.point[0]) + 5} y={y(s.point[1]) - 5} class="plan-name">{s.name}</text>)}
        {portal && <g transform={`translate(${x(portal[0])} ${y(portal[1])})`}><path d="M-8 8L0 -6L8 8Z" class="portal" /><text x="0" y="22" text-anchor="middle"><tspan font-weight="700">portal</tspan></text></g>}
        {spots.filter(s => s.at).map(({ h, i, at }) => <g key={h.entry} transform={`translate(${x(at![0])} ${y(at![1])})`}><circle r="9" class="spot" /><text text-anchor="middle" y="4.5" class="spot-number">{i + 1}</text></g>)}
        <g transform={`translate(${width - 40} 44) rotate(${north * 180 / Math.PI})`}><path d="M0 -28L6 12L0 6L-6 12Z" class="portal" /><text y="-31" text-anchor="middle">N</text></g>
        <g transform={`translate(${side} ${height - 12})`}><path d={`M0 -6V0H${bar * k}V-6`} class="plan-bar" /><text x={bar * k + 6} y="0">{crewText(bar, 'm', units, 1)}</text></g>
      </svg>
      <figcaption class="small">Plan from the crew’s own survey; numbers are the hazards above. {spots.some(s => !s.at) && `Not on the plan: ${spots.filter(s => !s.at).map(s => s.i + 1).join(', ')}.`}</figcaption>
    </figure>
  )
}
