import type { Workings } from '@lodebook/answers'
import { kinds } from '@lodebook/book'
import type { SurveyedBy } from '../../bookkeeper/desk.ts'
import { openAnswer } from '../../drawer/drawer-state.ts'
import { NorthsDrawn, PaperScale, ScaleBarDrawn } from '../../drawing/margin-parts.tsx'
import { InlineMark, symbolOf } from '../../drawing/symbols.tsx'
import type { SymbolName } from '../../drawing/symbols.tsx'
import { book } from '../../link/desk.ts'
import { dayText } from '../../words/moment.ts'
import { decimal } from '../../words/number.ts'
import { ellipseTimes } from './lines.tsx'
import { tapeUnit } from '../../words/tape-unit.ts'
import { toggled } from '../../drawing/toggled.ts'

interface Props {
  readonly workings: Workings
  /** Pixels a metre, when the plan is laid out. */
  readonly k: number | undefined
  /** On paper: one to so many. */
  readonly scale: number | undefined
  readonly upAzimuth: number
  readonly surveyed: SurveyedBy | undefined
  readonly hidden: ReadonlySet<string>
  readonly onHidden: (hidden: ReadonlySet<string>) => void
  readonly ellipses: boolean
  readonly onEllipses: (shown: boolean) => void
}

/** The margin of the sheet: whose mine, what scale, which norths, surveyed by whom and when, from what zero; and the legend, each mark with its count. */
export function Margin({ workings, k, scale, upAzimuth, surveyed, hidden, onHidden, ellipses, onEllipses }: Props) {
  const { norths } = workings, state = book.value!
  const counts = new Map<string, number>([['stations', workings.stations.length]])
  for (const p of workings.placed) if (p.kind !== 'tie') counts.set(p.kind, (counts.get(p.kind) ?? 0) + 1)
  const toggle = (kind: string) => onHidden(toggled(hidden, kind))
  return (
    <aside class="margin" aria-label="Margin of the sheet">
      <h2>{state.name || 'Workings'}</h2>
      {k !== undefined && <ScaleBarDrawn k={k} room={170} unit={tapeUnit()} />}
      {scale !== undefined && <PaperScale scale={scale} />}
      <button type="button" class="norths-button" onClick={() => openAnswer(norths.answer)} aria-haspopup="dialog">
        <NorthsDrawn up={upAzimuth} trueNorth={norths.trueNorth} magneticNorth={norths.magneticNorth} />
        <span>G grid, T true, M magnetic: <span class="fig-look">{decimal(norths.magneticNorth - norths.trueNorth, 1)}° from true</span></span>
      </button>
      <dl>
        {surveyed && surveyed.surveyors.length > 0 && <><dt>Surveyed</dt><dd>{surveyed.surveyors.join(', ')}</dd></>}
        {surveyed && surveyed.from !== '' && <><dt>Dates</dt><dd>{dayText(surveyed.from)}{surveyed.to !== surveyed.from && ` to ${dayText(surveyed.to)}`}</dd></>}
        <dt>Zero</dt><dd>{state.datum || 'not said'}</dd>
      </dl>
      <fieldset class="legend">
        <legend class="off-screen">What is drawn</legend>
        {[...counts].map(([kind, n]) => <LegendLine key={kind} kind={kind} n={n} shown={!hidden.has(kind)} onToggle={() => toggle(kind)} mark={kind === 'stations' ? 'station' : symbolOf(kind, '')} />)}
        <label><input type="checkbox" checked={ellipses} onChange={e => onEllipses(e.currentTarget.checked)} /><span>Doubt of stations, 95 in 100, drawn {ellipseTimes} times</span></label>
      </fieldset>
      <ul class="line-key" aria-label="Lines">
        <li><svg width="34" height="12" aria-hidden="true"><path class="wall" d="M1 2H33M1 10H33" /></svg>wall, taped</li>
        <li><svg width="34" height="12" aria-hidden="true"><path class="wall rough" d="M1 2H33M1 10H33" /></svg>wall, not taped</li>
        <li><svg width="34" height="12" aria-hidden="true"><path class="vein" d="M0 6H34" /><path class="vein-edge" d="M0 6H34" /></svg>vein</li>
        <li><svg width="34" height="12" aria-hidden="true"><path class="fault" d="M0 6H34" /></svg>fault</li>
        <li><svg width="34" height="12" aria-hidden="true"><path class="gone" fill="none" d="M1 1H33V11H1ZM6 11 16 1M16 11 26 1M26 11 33 4" /></svg>worked out</li>
      </ul>
    </aside>
  )
}

const LegendLine = ({ kind, n, shown, onToggle, mark }: {
  readonly kind: string
  readonly n: number
  readonly shown: boolean
  readonly onToggle: () => void
  readonly mark: SymbolName
}) => (
  <label>
    <input type="checkbox" checked={shown} onChange={onToggle} />
    <InlineMark name={mark} /><span>{kind === 'stations' ? 'Stations' : kinds[kind]?.plural ?? kind}</span><span class="n">{n}</span>
  </label>
)
