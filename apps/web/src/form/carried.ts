import type { Field } from '@lodebook/book'
import { kinds } from '@lodebook/book'
import type { FormHelp, Texts } from '../bookkeeper/desk.ts'
import { localDay, localMoment } from '../words/moment.ts'
import { editText } from './edit-text.ts'
import { nextName } from './next-name.ts'

/** Fields that are as a rule the same as in the entry before. */
const same: Readonly<Record<string, readonly string[]>> = {
  shot: ['north', 'compass', 'tape', 'surveyors'],
  sample: ['vein'],
  target: ['instrument', 'coil', 'setting'],
  width: ['vein'], structure: ['feature', 'name', 'north'],
  pan: ['mesh', 'panner'], assay: ['method', 'laboratory', 'certificate', 'reported', 'charge'],
  air: ['meter', 'heldAt', 'bumpTested'], work: ['people', 'heading', 'loadVolume'], 'going-in': ['people', 'outside', 'reach', 'call', 'callAfter'], scaling: ['by', 'stoodAt'], rock: ['by'], density: ['material'], ground: ['inspectedBy'],
}

/**
 * What a fresh form begins with: today, what is as it was last time, the next bag, and a shot from where the last one ended.
 * Everything can be changed; nothing is written until it is saved.
 */
export function carried(kindId: string, help: FormHelp, now: Date): Texts {
  const kind = kinds[kindId]!, texts: Record<string, string> = {}
  for (const [name, field] of Object.entries(kind.fields)) {
    const began = beginning(name, field, now)
    if (began !== '') texts[name] = began
  }
  for (const name of same[kindId] ?? []) {
    const value = help.before[name]
    if (value !== undefined) texts[name] = editText(value)
  }
  const last = help.before
  if (kindId === 'shot' && typeof last['to'] === 'string') {
    texts['from'] = last['to']
    texts['to'] = nextName(last['to'], new Set(help.stations))
  }
  for (const name of ['bag', 'mark', 'name']) {
    const is = kind.fields[name]?.is, value = last[name]
    if (typeof value === 'string' && (name === 'mark' || (is?.type === 'text' && is.unique === true))) texts[name] = nextName(value, new Set(help.used[name]))
  }
  return texts
}

const todays = ['taken', 'found', 'panned', 'made', 'worked', 'seen', 'on', 'paid']
function beginning(name: string, { is }: Field, now: Date): string {
  if (is.type === 'date' && todays.includes(name)) return localDay(now)
  if (is.type === 'moment' && (name === 'taken' || name === 'in')) return localMoment(now).slice(0, 16)
  return ''
}
