import type { Field, FieldValue } from '@lodebook/book'
import { ChoiceChips } from './choice-chips.tsx'
import { Chips } from './chips.tsx'
import { ColoursInput } from './colours-input.tsx'
import { describedBy, FieldFrame } from './field-frame.tsx'
import { PictureInput } from './picture-input.tsx'
import { PlaceInput } from './place-input.tsx'
import type { FieldReading } from './reading.ts'
import { FigureBox, TextBox } from './text-box.tsx'
import { UnitChoice } from './unit-choice.tsx'

export interface FieldProps {
  readonly id: string
  readonly field: Field
  readonly text: string
  readonly reading: FieldReading
  readonly doubts: readonly string[]
  readonly used: readonly string[]
  readonly stations: readonly string[]
  /** What was last written in this field. */
  readonly before: FieldValue | undefined
  /** The unit that a bare number takes, and those to choose from. */
  readonly unit: string
  readonly units: readonly string[]
  readonly onText: (text: string) => void
  readonly onUnit: (unit: string) => void
}

const atHand = 5

/** The control for one field, chosen by its type alone: every kind of entry has the same form. */
export function FieldInput(props: FieldProps) {
  const { id, field, text, reading, doubts, used, stations, onText } = props
  const { is, label, hint } = field
  const frame = { id, label, hint, echo: reading.echo, problem: reading.problem, doubts, required: field.required === true }
  const box = { id, label, hint, echo: reading.echo, problem: reading.problem, value: text, onText }
  switch (is.type) {
    case 'text': return <FieldFrame {...frame}><TextBox {...box} list={used} />{is.unique !== true && <Chips of={used.slice(0, atHand)} value={text} label={`${label}: used before`} onTake={onText} />}</FieldFrame>
    case 'words': return <FieldFrame {...frame}><TextBox {...box} /><Chips many of={used.slice(0, atHand + 2)} value={text} label={`${label}: used before`} onTake={onText} /></FieldFrame>
    case 'station': return <FieldFrame {...frame}><TextBox {...box} list={stations} /><Chips of={stations.slice(0, atHand)} value={text} label={`${label}: stations`} onTake={onText} /></FieldFrame>
    case 'ref': return <FieldFrame {...frame}><TextBox {...box} /></FieldFrame>
    case 'stations': return <FieldFrame {...frame} hint={hint ?? 'in order, parted by commas'}><TextBox {...box} /></FieldFrame>
    case 'note': return <FieldFrame {...frame}><textarea id={id} class="box" rows={3} value={text} aria-describedby={describedBy(id, hint, '', reading.problem)} onInput={e => onText(e.currentTarget.value)} /></FieldFrame>
    case 'places': return (
      <FieldFrame {...frame} hint={`${hint ? `${hint}; ` : ''}one on each line, such as A6 + 2.3 m toward A7, back`}>
        <textarea id={id} class="box" rows={5} value={text} aria-invalid={reading.problem !== ''} aria-describedby={describedBy(id, 'x', reading.echo, reading.problem)} onInput={e => onText(e.currentTarget.value)} />
      </FieldFrame>
    )
    case 'yes-no': return <FieldFrame {...frame} group><ChoiceChips of={['yes', 'no']} value={text} onTake={onText} /></FieldFrame>
    case 'choice': return <FieldFrame {...frame} group><ChoiceChips of={is.of} value={text} onTake={onText} /></FieldFrame>
    case 'choices': return <FieldFrame {...frame} group><Chips many of={is.of} value={text} label={label} onTake={onText} /></FieldFrame>
    case 'count': case 'number': case 'year': return <FieldFrame {...frame}><FigureBox {...box} /></FieldFrame>
    case 'money': return <FieldFrame {...frame}><TextBox {...box} /></FieldFrame>
    case 'date': return <FieldFrame {...frame}><input id={id} type="date" class="box" value={text} aria-invalid={reading.problem !== ''} aria-describedby={describedBy(id, hint, '', reading.problem)} onInput={e => onText(e.currentTarget.value)} /></FieldFrame>
    case 'moment': return <FieldFrame {...frame}><input id={id} type="datetime-local" class="box" value={text.slice(0, 16)} aria-invalid={reading.problem !== ''} aria-describedby={describedBy(id, hint, '', reading.problem)} onInput={e => onText(e.currentTarget.value)} /></FieldFrame>
    case 'quantity': return (
      <FieldFrame {...frame}>
        <div class="with-unit"><FigureBox {...box} dimension={is.dimension} /><UnitChoice id={id} label={label} units={props.units} unit={props.unit} onUnit={props.onUnit} /></div>
      </FieldFrame>
    )
    case 'place': return <FieldFrame {...frame} group><PlaceInput id={id} text={text} stations={stations} before={props.before} unit={props.unit} units={props.units} onUnit={props.onUnit} onText={onText} /></FieldFrame>
    case 'ground-line': return (
      <FieldFrame {...frame}>
        <div class="with-unit"><TextBox {...box} /><UnitChoice id={id} label={label} units={props.units} unit={props.unit} onUnit={props.onUnit} /></div>
      </FieldFrame>
    )
    case 'colours': return <FieldFrame {...frame} group><ColoursInput id={id} text={text} onText={onText} /></FieldFrame>
    case 'blob': return <FieldFrame {...frame}><PictureInput id={id} text={text} onText={onText} /></FieldFrame>
  }
}
