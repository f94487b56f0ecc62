import type { Workings } from '@lodebook/answers'
import { NorthsDrawn, PaperScale, ScaleBarDrawn } from '../../drawing/margin-parts.tsx'
import { InlineMark } from '../../drawing/symbols.tsx'
import { book } from '../../link/desk.ts'
import { symbolFor } from './things.ts'
import type { Marked, ShownKind } from './things.ts'
import { tapeUnit } from '../../words/tape-unit.ts'
import { toggled } from '../../drawing/toggled.ts'

/** The margin of the sheet of finds: scale, norths, each mark with its count and a switch, and what the swept lines say. */
export function FindsMargin({ marked, kinds, hidden, onHidden, k, scale, up, norths }: {
  readonly marked: readonly Marked[]
  readonly kinds: readonly ShownKind[]
  readonly hidden: ReadonlySet<string>
  readonly onHidden: (hidden: ReadonlySet<string>) => void
  readonly k: number | undefined
  readonly scale: number | undefined
  readonly up: number
  readonly norths: Workings['norths']
}) {
  const state = book.value!, count = (kind: ShownKind) => marked.filter(m => m.kind === kind && !m.thing.id.startsWith('station:')).length
  const toggle = (kind: string) => onHidden(toggled(hidden, kind))
  return (
    <aside class="margin" aria-label="Margin of the sheet">
      <h2>{state.name || 'Finds'}</h2>
      {k !== undefined && <ScaleBarDrawn k={k} room={170} unit={tapeUnit()} />}
      {scale !== undefined && <PaperScale scale={scale} />}
      <NorthsDrawn up={up} trueNorth={norths.trueNorth} magneticNorth={norths.magneticNorth} />
      <fieldset class="legend">
        <legend class="off-screen">What is drawn</legend>
        {kinds.filter(kind => count(kind) > 0).map(kind => (
          <label key={kind}>
            <input type="checkbox" checked={!hidden.has(kind)} onChange={() => toggle(kind)} />
            <InlineMark name={symbolFor[kind]} /><span>{kind}</span><span class="n">{count(kind)}</span>
          </label>
        ))}
      </fieldset>
      <ul class="line-key" aria-label="Lines">
        <li><svg width="34" height="12" aria-hidden="true"><path class="swept silent" d="M1 6H33" /></svg>swept, silent</li>
        <li><svg width="34" height="12" aria-hidden="true"><path class="swept rang" d="M1 6H33" /></svg>swept, it rang</li>
        <li class="soft">no line: nobody has gone over it, or nobody wrote it</li>
      </ul>
    </aside>
  )
}
