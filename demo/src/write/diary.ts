import { kinds, readField, type Draft, type FieldValue } from '@lodebook/book'
import type { Person } from './crew.ts'
import { offset } from './clock.ts'

/** What is written in each field, as plain text; empty or undefined fields are not written. */
export type Texts = Readonly<Record<string, string | undefined>>

/** One thing written, by whom, on which device and when (milliseconds since 1970). */
export interface Note {
  readonly at: number
  readonly device: string
  readonly by: string
  readonly draft: Draft
  /** For a change: whether the writer's device had what others had written to the entry by then. */
  readonly informed: boolean
}

/** Collects what the crew writes. Every text is read by the book's own door, so that the demo holds nothing a crew could not have typed. */
export interface Diary {
  /** Writes a new entry; returns its id. */
  write(person: Person, at: number, kind: string, texts: Texts): string
  /** Writes other fields to an entry, as a correction; `informed` false when the writer's device had not met the others' since. */
  mend(person: Person, at: number, entry: string, texts: Texts, why: string, informed?: boolean): void
  /** Strikes an entry through. */
  strike(person: Person, at: number, entry: string, why: string): void
  /** All that was written, in the order in which the parts of the season were made, not of time. */
  readonly notes: readonly Note[]
}

const options = { offset, currency: 'USD' }

export function makeDiary(): Diary {
  const notes: Note[] = [], kindOfEntry = new Map<string, string>(), counts = new Map<string, number>(), seen = new Map<string, FieldValue>()
  function read(kindId: string, texts: Texts): Record<string, FieldValue> {
    const set: Record<string, FieldValue> = {}
    for (const [name, text] of Object.entries(texts)) {
      if (text === undefined || text === '') continue
      const field = kinds[kindId]?.fields[name]
      if (field === undefined) throw new Error(`${kindId} has no field ${name}`)
      const key = `${field.is.type} ${'dimension' in field.is ? field.is.dimension : ''} ${text}`, known = field.is.type === 'quantity' ? seen.get(key) : undefined
      if (known !== undefined) { set[name] = known; continue }
      const value = readField(field, text, options, name)
      if (!value.ok) throw new Error(`${kindId} ${name}: ${text}: ${value.why ?? value.expected}`)
      set[name] = value.value
      if (field.is.type === 'quantity') seen.set(key, value.value)
    }
    return set
  }
  const add = (person: Person, at: number, draft: Draft, informed = true) => {
    notes.push({ at, device: person.device, by: person.name, draft, informed })
  }
  const kindNow = (entry: string): string => {
    const kind = kindOfEntry.get(entry)
    if (kind === undefined) throw new Error(`nothing has been written as ${entry}`)
    return kind
  }
  return {
    notes,
    write(person, at, kind, texts) {
      const number = (counts.get(kind) ?? 0) + 1, entry = `${kind}-${String(number).padStart(4, '0')}`
      counts.set(kind, number)
      kindOfEntry.set(entry, kind)
      add(person, at, { entry, kind, set: read(kind, texts) })
      return entry
    },
    mend(person, at, entry, texts, why, informed = true) {
      const kind = kindNow(entry)
      add(person, at, { entry, kind, set: read(kind, texts), why }, informed)
    },
    strike: (person, at, entry, why) => { add(person, at, { entry, kind: kindNow(entry), set: {}, struck: true, why }) },
  }
}
