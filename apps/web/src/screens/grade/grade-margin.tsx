import type { Grade, VeinAt } from '@lodebook/answers'
import { Figure } from '../../drawer/figure.tsx'
import { PaperScale, ScaleBarDrawn } from '../../drawing/margin-parts.tsx'
import { ramp } from '../../drawing/ramp.ts'
import { InlineMark } from '../../drawing/symbols.tsx'
import { book } from '../../link/desk.ts'
import { ground } from '../../shell/ground.ts'
import type { Class } from './classes.ts'
import type { shownAs } from './quantities.ts'
import { tapeUnit } from '../../words/tape-unit.ts'

/** The margin of the vein's sheet: what the colours stand for and how many panels have each, the marks with their counts, scale, and how the vein lies. */
export function GradeMargin({ grade, vein, k, scale, classes, shown }: {
  readonly grade: Grade
  readonly vein: VeinAt
  readonly k: number | undefined
  /** On paper: one to so many. */
  readonly scale: number | undefined
  readonly classes: readonly Class[]
  readonly shown: ReturnType<typeof shownAs>
}) {
  const on = ground.value, state = book.value!
  const placed = grade.samples.filter(s => s.at)
  const counts = [
    { mark: 'sample' as const, name: 'Samples', n: placed.filter(s => s.used && !s.below).length },
    { mark: 'sample-below' as const, name: 'Samples with no gold found', n: placed.filter(s => s.used && s.below).length },
    { mark: 'sample-unused' as const, name: 'Samples left aside', n: placed.filter(s => !s.used).length },
    { mark: 'station' as const, name: 'Stations', n: vein.stations.length },
  ].filter(c => c.n > 0)
  return (
    <aside class="margin" aria-label="Margin of the sheet">
      <h2>{state.name || 'The vein'}</h2>
      {k !== undefined && <ScaleBarDrawn k={k} room={170} unit={tapeUnit()} />}
      {scale !== undefined && <PaperScale scale={scale} />}
      <div>
        <p><b>{shown.label}</b>, {shown.unit}</p>
        <ul class="class-list">
          {[...classes].reverse().map((c, i) => (
            <li key={c.from}><span class="swatch" style={{ background: ramp(c.share, on) }} /><span>{i === 0 ? `${shown.text(c.from)} and more` : `${shown.text(c.from)} to ${shown.text(c.to)}`}</span><span class="n">{c.count}</span></li>
          ))}
        </ul>
        <p class="soft small">number of panels at the right</p>
      </div>
      <ul class="class-list">{counts.map(c => <li key={c.name}><InlineMark name={c.mark} /><span>{c.name}</span><span class="n">{c.n}</span></li>)}</ul>
      <dl>
        <dt>Strike</dt><dd><Figure answer={vein.strike} /></dd>
        <dt>Dip</dt><dd><Figure answer={vein.dip} /></dd>
        {vein.fault && <><dt>Fault</dt><dd><Figure answer={vein.fault.strike}>{vein.fault.name}</Figure></dd></>}
      </dl>
      <ul class="line-key" aria-label="Lines">
        <li><svg width="34" height="12" aria-hidden="true"><path class="wall" d="M1 2H33M1 10H33" /></svg>old heading</li>
        <li><svg width="34" height="12" aria-hidden="true"><path class="gone" fill="none" d="M1 1H33V11H1ZM6 11 16 1M16 11 26 1M26 11 33 4" /></svg>worked out</li>
        {vein.fault && <li><svg width="34" height="12" aria-hidden="true"><path class="fault" d="M0 6H34" /></svg>fault</li>}
      </ul>
    </aside>
  )
}
