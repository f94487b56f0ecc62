import type { Net, NetGroup } from '@lodebook/answers'
import { contours } from 'd3-contour'
import { useMemo } from 'preact/hooks'
import { line } from './ground.tsx'

/** The net's radius in the drawing's own units. */
export const radius = 10
const at = ([x, y]: readonly [number, number]) => ({ x: x * radius, y: y * radius })

/** The rim with its ticks, the chosen group's contours, the fitted planes and the chosen group's mean with its cone. */
export function NetLines({ net, group }: { readonly net: Net, readonly group: NetGroup | undefined }) {
  const drawn = useMemo(() => group?.density && contoursOf(group.density), [group])
  return (
    <>
      <defs><clipPath id="net-rim"><circle r={radius} /></clipPath></defs>
      <circle class="net-disc" r={radius} />
      <g clip-path="url(#net-rim)">
        {drawn?.map(c => <path key={c.value} class="net-contour" d={c.d} />)}
      </g>
      {net.planes.map(p => <path key={p.name} class={p.is === 'vein' ? 'net-vein' : 'fault'} d={line(p.circle.map(at))}><title>{p.name}</title></path>)}
      {group?.mean && (
        <>
          {group.mean.circle.length > 0 && <path class="net-mean" d={line(group.mean.circle.map(at))}><title>Mean of {group.label}</title></path>}
          {group.mean.cone.map((piece, i) => <path key={i} class="net-cone" d={line(piece.map(at))} />)}
        </>
      )}
      <circle class="net-rim" r={radius} />
      <path
        class="net-rim"
        d={[0, 30, 60, 90, 120, 150, 180, 210, 240, 270, 300, 330].map((a) => {
          const t = a * Math.PI / 180, out = radius * (a % 90 === 0 ? 1.05 : 1.025)
          return `M${radius * Math.sin(t)} ${radius * Math.cos(t)}L${out * Math.sin(t)} ${out * Math.cos(t)}`
        }).join('')}
      />
      <path class="net-rim" d="M-.35 0H.35M0-.35V.35" />
    </>
  )
}

/** Even levels of a density, at most six. */
export function levelsOf(most: number): readonly number[] {
  const step = [2, 3, 5, 10, 20, 50, 100].find(s => most / s < 7) ?? most / 6
  return Array.from({ length: Math.max(0, Math.floor(most / step)) }, (_, i) => (i + 1) * step)
}

function contoursOf({ size, values, most }: NonNullable<NetGroup['density']>): readonly { readonly value: number, readonly d: string }[] {
  const place = (k: number) => (2 * (k - 0.5) / (size - 1) - 1) * radius
  return contours().size([size, size]).thresholds([...levelsOf(most)])([...values]).map(({ value, coordinates }) => ({
    value, d: coordinates.flat().map(ring => line(ring.map(p => ({ x: place(p[0]!), y: place(p[1]!) })), true)).join(''),
  }))
}
