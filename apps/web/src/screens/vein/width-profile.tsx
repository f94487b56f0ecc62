import type { Thickness, VeinAt } from '@lodebook/answers'
import { gridStep, steps } from '../../drawing/scale-bar.ts'
import type { View } from '../../drawing/view.ts'
import { book } from '../../link/desk.ts'
import { crewUnit, crewValue } from '../../words/crew-value.ts'
import { decimal } from '../../words/number.ts'

const tall = 150, top = 18, foot = 10
const reach = 1.2816 // an 80 % range from one standard deviation

/** True widths against the way along the vein, under the vein laid flat and at its scale: each with its 80 % range, and the running mean with its own. */
export function WidthProfile({ vein, thickness, view, width, lit, onPoint, onPick, here }: {
  readonly vein: VeinAt
  readonly thickness: Thickness
  readonly view: View
  readonly width: number
  readonly lit: string | undefined
  readonly onPoint: (id: string | undefined) => void
  readonly onPick: (id: string) => void
  readonly here: ReadonlySet<string>
}) {
  const units = book.value?.units ?? 'metres and g/t', per = crewValue(1, 'm', units).value
  const most = Math.max(...vein.widths.map(w => w.width + reach * w.sigma)) * 1.05
  const x = (along: number) => view.x + along * view.k, y = (w: number) => top + tall * (1 - w / most)
  const step = gridStep(tall / (most * per), 34)
  const { along } = thickness
  return (
    <svg class="profile" viewBox={`0 0 ${width} ${top + tall + foot}`} height={top + tall + foot} width={width} role="group" aria-label="True width along the vein">
      {steps(0, most * per, step).map(v => <g key={v}><path class="grid-line" d={`M0 ${y(v / per)}H${width}`} /><text x={9} y={y(v / per) - 3}>{decimal(v, step < 1 ? 1 : 0)}</text></g>)}
      <text x={9} y={12}>true width, {crewUnit('m', units)}</text>
      {along.length > 1 && <path class="profile-band" d={`M${along.map(p => `${x(p.at)} ${y(p.high)}`).join('L')}L${[...along].reverse().map(p => `${x(p.at)} ${y(p.low)}`).join('L')}Z`} />}
      {along.length > 1 && <path class="profile-mean" d={`M${along.map(p => `${x(p.at)} ${y(p.mean)}`).join('L')}`} />}
      {vein.widths.map(w => (
        <g key={w.entry} class={w.entry === lit ? 'profile-width lit' : 'profile-width'} onPointerEnter={() => onPoint(w.entry)} onClick={() => onPick(w.entry)}>
          <path d={`M${x(w.at.along)} ${y(Math.max(0, w.width - reach * w.sigma))}V${y(w.width + reach * w.sigma)}`} />
          <circle cx={x(w.at.along)} cy={y(w.width)} r={w.entry === lit ? 6 : 3.5} class={here.has(w.entry) ? 'full' : 'open'} />
          <circle cx={x(w.at.along)} cy={y(w.width)} r={11} class="halo" />
        </g>
      ))}
    </svg>
  )
}
