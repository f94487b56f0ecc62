import type { JointPlace } from '@lodebook/answers'
import { openEntry } from '../../drawer/drawer-state.ts'

const r = 100

/** A small equal-area net, lower half: each reading's pole, the mean plane of each direction, and the heading as a line across. */
export function JointNet({ net, azimuth, name }: { readonly net: JointPlace['net'], readonly azimuth: number, readonly name: string }) {
  const path = (points: JointPlace['net']['circles'][number]) => points.map((p, i) => `${i === 0 ? 'M' : 'L'}${(p[0] * r).toFixed(1)} ${(-p[1] * r).toFixed(1)}`).join('')
  const [e, n] = [Math.sin(azimuth * Math.PI / 180) * r, -Math.cos(azimuth * Math.PI / 180) * r]
  return (
    <figure class="joint-net">
      <svg viewBox="-122 -126 244 250" role="group" aria-label={`Net of ${net.poles.length} readings at ${name}, equal area, lower half`}>
        <circle r={r} class="net-rim" />
        <path class="net-rim" d="M0 -100V-107M100 0H107M0 100V107M-100 0H-107M-3 0H3M0 -3V3" />
        <text y="-112" text-anchor="middle">N</text>
        <path class="heading-line" d={`M${-e} ${-n}L${e} ${n}`} />
        {net.circles.map((c, i) => <path key={i} class="mean-plane" d={path(c)} />)}
        {net.poles.map(p => (
          <g key={p.entry} class="net-pole" role="button" tabIndex={0} aria-label={`${p.feature}, open its entry`} transform={`translate(${p.at[0] * r} ${-p.at[1] * r})`} onClick={() => openEntry(p.entry)} onKeyDown={(k) => { if (k.key === 'Enter') openEntry(p.entry) }}>
            <circle r="10" class="hit" />
            {p.feature === 'joint' ? <circle r="3.4" class="dot" /> : <rect x="-3.2" y="-3.2" width="6.4" height="6.4" class="other" />}
          </g>
        ))}
      </svg>
      <figcaption class="small soft">Equal area, lower half, grid north up. Dots: poles of joints; squares: other planes; curves: the mean of each direction; dashes: the heading.</figcaption>
    </figure>
  )
}
