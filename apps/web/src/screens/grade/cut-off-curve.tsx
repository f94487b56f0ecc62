import type { AboveCutOff } from '@lodebook/answers'
import { useId } from 'preact/hooks'
import { Figure, rangeText } from '../../drawer/figure.tsx'
import { book } from '../../link/desk.ts'
import { crewText, crewUnit, crewValue } from '../../words/crew-value.ts'
import { counted } from '../../words/number.ts'

const wide = 560, high = 150, pad = { left: 46, right: 14, top: 16, bottom: 26 }

/** A slider for the cut-off, what is left above it, and the curves of rock and of grade with their 8-in-10 ranges. */
export function CutOffCurve({ cutOffs, cut, onCut }: {
  readonly cutOffs: readonly AboveCutOff[]
  readonly cut: number
  readonly onCut: (index: number) => void
}) {
  const { units } = book.value!, id = useId(), at = cutOffs[cut]!
  return (
    <section class="section cut-off" aria-labelledby={`${id}h`}>
      <h2 id={`${id}h`}>What is left above a cut-off</h2>
      <label class="label" for={id}>Cut-off, as broken: <b>{cut === 0 ? 'none' : crewText(at.cutOff, 'g/t', units)}</b></label>
      <input id={id} type="range" min={0} max={cutOffs.length - 1} step={1} value={cut} aria-valuetext={crewText(at.cutOff, 'g/t', units)} onInput={e => onCut(Number(e.currentTarget.value))} />
      <dl class="figures">
        <div><dt>panels</dt><dd>{counted(at.panels, 'panel')}</dd></div>
        <div><dt>rock to break</dt><dd><Figure answer={at.tonnes} /></dd><dd class="soft small">{rangeText(at.tonnes)}</dd></div>
        <div><dt>gold in it</dt><dd><Figure answer={at.ounces} /></dd><dd class="soft small">{rangeText(at.ounces)}</dd></div>
        <div><dt>grade as broken</dt><dd><Figure answer={at.grade} /></dd><dd class="soft small">{rangeText(at.grade)}</dd></div>
      </dl>
      <div class="curves">
        <Curve name={`Rock above, ${crewUnit('t', units)}`} cutOffs={cutOffs} cut={cut} pick={c => c.tonnes} unit="t" onCut={onCut} />
        <Curve name={`Grade above, ${crewUnit('g/t', units)}`} cutOffs={cutOffs} cut={cut} pick={c => c.grade} unit="g/t" onCut={onCut} />
      </div>
    </section>
  )
}

/** One curve over the cut-offs, evenly spaced as the slider is; tap to choose one. */
function Curve({ name, cutOffs, cut, pick, unit, onCut }: {
  readonly name: string
  readonly cutOffs: readonly AboveCutOff[]
  readonly cut: number
  readonly pick: (c: AboveCutOff) => AboveCutOff['tonnes']
  readonly unit: string
  readonly onCut: (index: number) => void
}) {
  const { units } = book.value!, put = (v: number) => crewValue(v, unit, units).value
  const shown = cutOffs.filter(c => c.panels > 0), top = Math.max(...shown.map(c => put(pick(c).range?.high ?? pick(c).value)), 1e-9)
  const x = (i: number) => pad.left + i * (wide - pad.left - pad.right) / Math.max(1, cutOffs.length - 1),
    y = (v: number) => high - pad.bottom - v / top * (high - pad.top - pad.bottom)
  const line = (of: (c: AboveCutOff) => number) => shown.map((c, i) => `${i === 0 ? 'M' : 'L'}${x(i).toFixed(1)} ${y(put(of(c))).toFixed(1)}`).join('')
  const band = `${line(c => pick(c).range!.high)}${[...shown].reverse().map((c, i) => `L${x(shown.length - 1 - i).toFixed(1)} ${y(put(pick(c).range!.low)).toFixed(1)}`).join('')}Z`
  const every = Math.ceil(cutOffs.length / 6), spoken = crewText(pick(cutOffs[cut]!).value, unit, units)
  return (
    <figure>
      <figcaption>{name}</figcaption>
      <svg
        viewBox={`0 0 ${wide} ${high}`}
        role="img"
        aria-label={`${name}: ${spoken} at the cut-off chosen`}
        onClick={(e) => {
          const box = e.currentTarget.getBoundingClientRect(), at = (e.clientX - box.left) / box.width * wide
          onCut(Math.max(0, Math.min(cutOffs.length - 1, Math.round((at - pad.left) / (wide - pad.left - pad.right) * (cutOffs.length - 1)))))
        }}
      >
        {shown.length > 1 && <path class="band" d={band} />}
        <path class="curve" d={line(c => pick(c).value)} />
        <path class="axis" d={`M${pad.left} ${pad.top}V${high - pad.bottom}H${wide - pad.right}`} />
        <text x={pad.left - 6} y={pad.top + 4} text-anchor="end">{crewText(pick(shown.find(c => put(pick(c).range?.high ?? 0) === top) ?? shown[0]!).range?.high ?? 0, unit, units, undefined, true)}</text>
        <text x={pad.left - 6} y={high - pad.bottom} text-anchor="end">0</text>
        {cutOffs.map((c, i) => i % every === 0 && <text key={c.cutOff} x={x(i)} y={high - 9} text-anchor="middle">{crewText(c.cutOff, 'g/t', units, undefined, true)}</text>)}
        <path class="here" d={`M${x(cut)} ${pad.top}V${high - pad.bottom}`} />
      </svg>
    </figure>
  )
}
