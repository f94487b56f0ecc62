import { sides, turns } from '@lodebook/book'
import type { FieldValue } from '@lodebook/book'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { ChoiceChips } from './choice-chips.tsx'
import { Chips } from './chips.tsx'
import { editText } from './edit-text.ts'
import { partsOfPlace, placeFromParts, waysToSay } from './place-parts.ts'
import type { PlaceParts, WayToSay } from './place-parts.ts'
import { fieldText } from '../words/field-text.ts'
import { reading } from './reading.ts'
import { FigureBox, TextBox } from './text-box.tsx'
import type { BoxProps } from './text-box.tsx'
import { UnitChoice } from './unit-choice.tsx'

const say: Readonly<Record<WayToSay, string>> = { station: 'from a station', tapes: 'two tapes', grid: 'grid', gps: 'GPS', words: 'in words' }
const atHand = 5

/** Where something is, said in one of five ways. The pieces make one text, which the one reader of places understands or questions. */
export function PlaceInput({ id, text, stations, before, unit, units, onUnit, onText }: {
  readonly id: string
  readonly text: string
  readonly stations: readonly string[]
  /** The place written last in this field. */
  readonly before: FieldValue | undefined
  /** The unit that a bare length takes, and those to choose from. */
  readonly unit: string
  readonly units: readonly string[]
  readonly onUnit: (unit: string) => void
  readonly onText: (text: string) => void
}) {
  const [parts, setParts] = useState<PlaceParts>(() => partsOfPlace(text, unit))
  const change = (some: Partial<PlaceParts>) => {
    const next = { ...parts, ...some } as PlaceParts
    setParts(next)
    onText(placeFromParts(next))
  }
  const piece = (name: string, label: string) => ({ id: `${id}-${name}`, label, hint: undefined, echo: '', problem: '', value: parts[name] ?? '', onText: (t: string) => change({ [name]: t }) })
  const tape = (name: string, label: string, said = label) => (
    <Tape key={name} box={piece(name, said)} label={label} unit={unit} units={units} onUnit={onUnit} />
  )
  return (
    <div class="place">
      {before !== undefined && text === '' && (
        <button type="button" class="chip as-before" onClick={() => { setParts(partsOfPlace(editText(before), unit)); onText(editText(before)) }}>Same place as the last: {fieldText(before)}</button>
      )}
      <ChoiceChips of={waysToSay.map(w => say[w])} value={say[parts.by]} onTake={(word) => { if (word !== '') change({ by: waysToSay.find(w => say[w] === word)! }) }} />
      {parts.by === 'station' && (
        <>
          <div class="pieces">
            <Piece id={`${id}-station`} label="Station"><TextBox {...piece('station', 'Station')} list={stations} /></Piece>
            <Piece id={`${id}-toward`} label="Towards"><TextBox {...piece('toward', 'Towards')} list={stations} /></Piece>
          </div>
          <Chips of={stations.slice(0, atHand)} value={parts['station'] ?? ''} label="Stations" onTake={t => change({ station: t })} />
          <div class="pieces">
            {tape('along', 'How far along')}
            {tape('height', 'Above the sill')}
            {tape('good', 'Good to')}
          </div>
          <ChoiceChips of={sides} value={parts['side'] ?? ''} onTake={t => change({ side: t })} />
        </>
      )}
      {parts.by === 'tapes' && (
        <>
          <div class="pieces">
            <Piece id={`${id}-first`} label="First station"><TextBox {...piece('first', 'First station')} list={stations} /></Piece>
            {tape('firstTape', 'Tape from it', 'Tape from the first')}
            <Piece id={`${id}-second`} label="Second station"><TextBox {...piece('second', 'Second station')} list={stations} /></Piece>
            {tape('secondTape', 'Tape from it', 'Tape from the second')}
            {tape('height', 'Above the sill')}
            {tape('good', 'Good to')}
          </div>
          <ChoiceChips of={turns} value={parts['turn'] ?? ''} onTake={t => change({ turn: t })} />
          <p class="hint">Two tapes meet twice: on which hand of the line from the first to the second, or above or below it</p>
        </>
      )}
      {parts.by === 'grid' && (
        <div class="pieces">
          {tape('east', 'East')}
          {tape('north', 'North')}
          {tape('up', 'Elevation')}
        </div>
      )}
      {parts.by === 'gps' && (
        <>
          <div class="pieces">
            <Piece id={`${id}-latitude`} label="Latitude"><FigureBox {...piece('latitude', 'Latitude')} /></Piece>
            <Piece id={`${id}-longitude`} label="Longitude"><FigureBox {...piece('longitude', 'Longitude')} /></Piece>
            <Piece id={`${id}-accuracy`} label="Good to, m"><FigureBox {...piece('accuracy', 'Good to')} /></Piece>
          </div>
          <FixButton onFix={change} />
        </>
      )}
      {parts.by === 'words' && <Piece id={`${id}-words`} label="Where, in words"><TextBox {...piece('words', 'Where, in words')} /></Piece>}
    </div>
  )
}

const Piece = ({ id, label, children }: { readonly id: string, readonly label: string, readonly children: ComponentChildren }) => (
  <div class="piece"><label class="small" for={id}>{label}</label>{children}</div>
)

/** One length of a place: the unit that a bare number takes stands beside it, and how it was understood under it. */
function Tape({ box, label, unit, units, onUnit }: {
  readonly box: BoxProps
  readonly label: string
  readonly unit: string
  readonly units: readonly string[]
  readonly onUnit: (unit: string) => void
}) {
  const { echo, problem } = reading('length', { label: box.label, is: { type: 'quantity', dimension: 'length' } }, box.value, { units: { length: unit } })
  return (
    <Piece id={box.id} label={label}>
      <div class="with-unit">
        <FigureBox {...box} echo={echo} problem={problem} dimension="length" />
        <UnitChoice id={box.id} label={box.label} units={units} unit={unit} onUnit={onUnit} />
      </div>
      {echo && <output class="echo" id={`${box.id}-echo`}>{echo}</output>}
      {problem && <p class="problem" id={`${box.id}-problem`}>{problem}</p>}
    </Piece>
  )
}

function FixButton({ onFix }: { readonly onFix: (parts: Partial<PlaceParts>) => void }) {
  const [says, setSays] = useState('')
  if (!('geolocation' in navigator)) return null
  const fix = () => {
    setSays('Waiting for a fix…')
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        setSays('')
        onFix({ latitude: coords.latitude.toFixed(6), longitude: coords.longitude.toFixed(6), accuracy: String(Math.ceil(coords.accuracy)) })
      },
      refusal => setSays(refusal.code === refusal.PERMISSION_DENIED ? 'This device does not let the app see its position' : 'No fix: GPS does not reach underground'),
      { enableHighAccuracy: true, timeout: 60_000 })
  }
  return <><button type="button" class="btn" onClick={fix}>Take it from this device</button><output class="echo">{says}</output></>
}
