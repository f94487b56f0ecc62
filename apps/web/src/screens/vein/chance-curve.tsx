import type { LostHeading } from '@lodebook/answers'
import { useRef, useState } from 'preact/hooks'
import { Figure } from '../../drawer/figure.tsx'
import { gridStep, steps } from '../../drawing/scale-bar.ts'
import { useSize } from '../../drawing/use-size.ts'
import { book } from '../../link/desk.ts'
import { crewText, crewUnit, crewValue } from '../../words/crew-value.ts'
import { azimuthText, decimal } from '../../words/number.ts'

const left = 44, right = 18, top = 16, foot = 44, tall = 190

/** The chance that a heading has met the vein after so many metres, as a curve; a slider reads it off for any length. */
export function ChanceCurve({ heading, shortest }: { readonly heading: LostHeading, readonly shortest: LostHeading | undefined }) {
  const box = useRef<HTMLDivElement>(null), { width } = useSize(box), units = book.value?.units ?? 'metres and g/t'
  const far = Math.max(...heading.chance.map(c => c.within)), [at, setAt] = useState(heading.length.value)
  const x = (m: number) => left + m / far * (width - left - right), y = (chance: number) => top + (1 - chance) * tall
  const per = crewValue(1, 'm', units).value, step = gridStep((width - left - right) / (far * per), 64)
  const path = (h: LostHeading) => `M${x(0)} ${y(0)}` + h.chance.filter(c => c.within <= far + 1e-9).map(c => `L${x(c.within)} ${y(c.chance)}`).join('')
  const chance = chanceAt(heading, at), says = `Driven ${crewText(at, 'm', units)} from ${heading.station} at ${azimuthText(heading.bearing)} level, it has met the vein in ${decimal(20 * chance, 0)} of 20 cases.`
  const id = `drive-${heading.station}`
  return (
    <div ref={box} class="chance">
      <p class="dots-says" aria-live="polite">{says}</p>
      {width > 0 && (
        <svg class="dots" viewBox={`0 0 ${width} ${top + tall + foot}`} height={top + tall + foot} role="img" aria-label={`Chance of meeting the vein against the length driven. ${heading.length.sentence}`}>
          {[0, 0.25, 0.5, 0.75, 1].map(c => <g key={c}><path class="grid-line" d={`M${left} ${y(c)}H${width - right}`} /><text x={left - 8} y={y(c) + 4} text-anchor="end">{decimal(20 * c, 0)}</text></g>)}
          {steps(0, far * per, step).map(v => <g key={v}><path class="axis" d={`M${x(v / per)} ${top + tall}v5`} /><text x={x(v / per)} y={top + tall + 19} text-anchor="middle">{decimal(v, step < 1 ? 1 : 0)}</text></g>)}
          <path class="axis" d={`M${left} ${top + tall}H${width - right}`} />
          <text x={width - right} y={top + tall + 38} text-anchor="end">driven, {crewUnit('m', units)}</text>
          <text x={4} y={11}>cases of 20</text>
          {shortest && <path class="curve other" d={path(shortest)} />}
          <path class="curve" d={path(heading)} />
          <path class="line" d={`M${x(at)} ${y(0)}V${y(chance)}H${left}`} fill="none" />
          <circle cx={x(at)} cy={y(chance)} r={5} />
        </svg>
      )}
      <label class="label" for={id}>How far would you drive?</label>
      <input id={id} type="range" min={0} max={far} step={far / 100} value={at} onInput={e => setAt(Number(e.currentTarget.value))} aria-valuetext={says} />
      <p class="soft small">Full line: level from {heading.station}{shortest && '; broken: the shortest way of all, up or down'}. <Figure answer={heading.length}>Open this</Figure></p>
    </div>
  )
}

/** Read off between the points of the curve. */
function chanceAt({ chance }: LostHeading, at: number): number {
  let before = { within: 0, chance: 0 }
  for (const c of chance) {
    if (c.within >= at) return before.chance + (c.chance - before.chance) * (at - before.within) / (c.within - before.within)
    before = c
  }
  return before.chance
}
