import type { Entry, Kind } from '@lodebook/book'
import { useEffect, useMemo, useState } from 'preact/hooks'
import type { FormHelp, Finding, Texts } from '../bookkeeper/desk.ts'
import { book, desk } from '../link/desk.ts'
import { clockText } from '../words/moment.ts'
import { measuredIn, rememberUnit, unitsOffered, unitTaken } from './crew-units.ts'
import { editText } from './edit-text.ts'
import { FieldInput } from './field-input.tsx'
import { Keypad } from './keypad.tsx'
import { optionsFor } from './options.ts'
import { reading } from './reading.ts'
import { changes } from './to-draft.ts'
import { shapeOf } from './shape.ts'
import { Writer } from './writer.tsx'

interface Props {
  readonly kind: Kind
  readonly help: FormHelp
  /** What a fresh form begins with. */
  readonly begin: Texts
  /** The entry to mend; a new one when left out. */
  readonly mend?: Entry
  readonly onSaved: (entry: string, says: string) => void
}

/** The form for one entry of any kind. What is typed is kept at every key; it counts as saved only when it is durable. */
export function EntryForm({ kind, help, begin, mend, onSaved }: Props) {
  const state = book.value!
  const original = useMemo<Texts>(() => mend ? Object.fromEntries(Object.entries(mend.fields).map(([n, v]) => [n, editText(v)])) : {}, [mend])
  const [texts, setTexts] = useState<Texts>(() => help.draft ?? (mend ? original : begin))
  const [units, setUnits] = useState<Readonly<Record<string, string>>>({})
  const [findings, setFindings] = useState<readonly Finding[]>([]), [tried, setTried] = useState(false), [trouble, setTrouble] = useState(''), [saving, setSaving] = useState(false)
  const [why, setWhy] = useState('')
  const [round, setRound] = useState(0)

  const options = useMemo(() => optionsFor(kind, state, help, units), [kind, state.units, state.currency, help, units])
  const readings = useMemo(() => Object.fromEntries(Object.entries(kind.fields).map(([name, field]) => [name, reading(name, field, texts[name] ?? '', options)])), [kind, texts, options])
  const draft = useMemo(() => ({ ...(mend ? { entry: mend.id } : {}), kind: kind.id, set: changes(kind, readings, mend) }), [readings, mend])

  // The book's own doubts (a bag used before, a station nobody has measured) come after a pause in typing.
  useEffect(() => {
    const wait = setTimeout(() => { void desk.check(draft).then(setFindings) }, 400)
    return () => clearTimeout(wait)
  }, [draft])

  const change = (name: string, text: string) => {
    const next = { ...texts, [name]: text }
    setTexts(next)
    void desk.keepDraft(kind.id, mend?.id, next)
  }
  const problemOf = (name: string): string => readings[name]!.problem || (tried ? findings.find(f => !f.warning && fieldOf(f) === name)?.message ?? '' : '')
  const unread = Object.keys(kind.fields).filter(name => readings[name]!.problem !== '')

  const save = async () => {
    setTried(true)
    setTrouble('')
    if (state.writer === '') { document.getElementById('writer')?.focus(); setTrouble('Say who is writing first.'); return }
    if (unread.length > 0) { document.getElementById(idOf(kind, unread[0]!))?.focus(); setTrouble('Not saved: a field could not be read.'); return }
    setSaving(true)
    try {
      const done = await desk.write(state.writer, why.trim() === '' ? draft : { ...draft, why: why.trim() })
      if (!done.saved) {
        setFindings(done.problems)
        const first = done.problems.find(p => !p.warning)
        setTrouble(`Not saved: ${first === undefined ? 'something does not fit' : kind.fields[fieldOf(first)]?.label.toLowerCase() ?? first.message}.`)
        const target = first && document.getElementById(idOf(kind, fieldOf(first)))
        if (target) { (target.matches('fieldset') ? target.querySelector<HTMLElement>('input, button') : target)?.focus() }
        return
      }
      await desk.keepDraft(kind.id, mend?.id, undefined)
      onSaved(done.entry, `Saved on this device at ${clockText(done.at)}`)
    } catch (problem) {
      setTrouble(`Not saved: ${problem instanceof Error ? problem.message : String(problem)}. What you typed is kept in this form.`)
    } finally { setSaving(false) }
  }
  const startAfresh = () => { void desk.keepDraft(kind.id, mend?.id, undefined); setTexts(mend ? original : begin); setTried(false); setTrouble(''); setRound(round + 1) }

  const { first, rest } = shapeOf(kind)
  const show = (name: string) => {
    const field = kind.fields[name]!, dimension = measuredIn(field.is)
    const offered = dimension === undefined ? [] : unitsOffered(dimension, state.units)
    return (
      <FieldInput
        key={`${name}${round}`}
        id={idOf(kind, name)}
        field={field}
        text={texts[name] ?? ''}
        reading={{ ...readings[name]!, problem: problemOf(name) }}
        doubts={findings.filter(f => f.warning && fieldOf(f) === name).map(f => f.message)}
        used={help.used[name] ?? []}
        stations={help.stations}
        before={help.before[name]}
        units={offered}
        unit={dimension === undefined ? '' : units[name] ?? unitTaken(kind.id, name, dimension, state.units)}
        onText={text => change(name, text)}
        onUnit={(unit) => { rememberUnit(kind.id, name, unit); setUnits({ ...units, [name]: unit }) }}
      />
    )
  }
  const filled = rest.filter(name => (texts[name] ?? '') !== '')
  const whole = findings.filter(f => !(fieldOf(f) in kind.fields) && (tried || f.warning))
  return (
    <form class="entry-form" noValidate onSubmit={(e) => { e.preventDefault(); void save() }}>
      <Writer />
      <div class={kind.id === 'shot' ? 'fields fields-shot' : 'fields'}>{first.map(show)}</div>
      {rest.length > 0 && (
        <details class="more" open={filled.some(name => readings[name]!.problem !== '')}>
          <summary>More about it{filled.length > 0 && <span class="soft"> · {filled.map(name => kind.fields[name]!.label.toLowerCase()).join(', ')} filled in</span>}</summary>
          <div class="fields">{rest.map(show)}</div>
        </details>
      )}
      {mend && <div class="field"><label class="label" for="why">Why it is mended <span class="soft small">· may be left out</span></label><input id="why" type="text" class="box" value={why} onInput={e => setWhy(e.currentTarget.value)} /></div>}
      {whole.map(f => <p key={f.message} class={f.warning ? 'doubt' : 'problem'}>{f.message}</p>)}
      <div class="save-bar">
        <p role="alert" class="problem save-trouble">{trouble}</p>
        <button type="button" class="btn quiet" onClick={startAfresh}>{mend ? 'As it was' : 'Clear'}</button>
        <button type="submit" class="btn strong save" disabled={saving}>{saving ? 'Saving…' : mend ? 'Save the mending' : `Save ${kind.label.toLowerCase()}`}</button>
      </div>
      <Keypad />
    </form>
  )
}

const idOf = (kind: Kind, name: string): string => `${kind.id}-${name}`
const fieldOf = (finding: Finding): string => /^\w+/.exec(finding.field)?.[0] ?? ''
