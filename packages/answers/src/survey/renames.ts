import type { Entry, FieldValue, Place } from '@lodebook/book'
import { kinds } from '@lodebook/book'
import { textOf } from '../read.ts'

/** What the crew's renamings come to. */
export interface Renames {
  /** The name that a station goes by now. */
  readonly now: (name: string) => string
  /** Entries with every station under its present name; the very same list when nothing in it changes. */
  readonly apply: (entries: readonly Entry[]) => readonly Entry[]
  readonly cautions: readonly string[]
}

/**
 * Follows renamings in the order in which they were written. Whatever went by the old name, through however many renamings, goes by the new
 * one from then on: A7 to B1 and B1 to B2 make A7, B1 and B2 one station; a second renaming of A7 itself moves all of it once more, and is
 * named, since two people may have meant two different marks.
 */
export function renamesOf(entries: readonly Entry[]): Renames {
  const present = new Map<string, string>()
  const now = (name: string): string => present.get(name) ?? name
  const toldOf = new Map<string, string[]>()
  for (const entry of entries) {
    const was = textOf(entry, 'was'), next = textOf(entry, 'now')
    if (was === undefined || next === undefined || was === next) continue
    toldOf.set(was, [...toldOf.get(was) ?? [], next])
    const from = now(was)
    present.delete(next) // a name taken up again stands for itself
    for (const [name, at] of present) if (at === from && name !== next) present.set(name, next)
    if (was !== next) present.set(was, next)
    if (from !== next) present.set(from, next)
  }
  const twice = [...toldOf].filter(([, names]) => new Set(names).size > 1)
  return {
    now, apply: list => present.size === 0 ? list : applyTo(list, now),
    cautions: twice.map(([was, names]) => `Station ${was} was renamed ${names.length} times: to ${names.join(', then to ')}. The last stands, and everything written at ${was} is now at ${now(was)}; if two marks were meant, strike one renaming and mend what hangs on it.`),
  }
}

function applyTo(list: readonly Entry[], now: (name: string) => string): readonly Entry[] {
  let changed = false
  const after = list.map((entry) => {
    const next = renamedEntry(entry, now)
    if (next !== entry) changed = true
    return next
  })
  return changed ? after : list
}

function renamedEntry(entry: Entry, now: (name: string) => string): Entry {
  const described = kinds[entry.kind]?.fields
  if (!described || entry.kind === 'rename') return entry
  const set: Record<string, FieldValue> = {}
  for (const [name, value] of Object.entries(entry.fields)) {
    const is = described[name]?.is.type
    if (is === 'station' && now(value as string) !== value) set[name] = now(value as string)
    else if (is === 'stations') {
      const names = value as readonly string[]
      if (names.some(one => now(one) !== one)) set[name] = names.map(now)
    } else if (is === 'place') {
      const moved = renamedPlace(value as Place, now)
      if (moved !== value) set[name] = moved
    } else if (is === 'places') {
      const places = value as readonly Place[], moved = places.map(place => renamedPlace(place, now))
      if (moved.some((place, i) => place !== places[i])) set[name] = moved
    }
  }
  return Object.keys(set).length === 0 ? entry : { ...entry, fields: { ...entry.fields, ...set } }
}

function renamedPlace(place: Place, now: (name: string) => string): Place {
  if (place.by === 'station') {
    const station = now(place.station), toward = place.toward === undefined ? undefined : now(place.toward)
    return station === place.station && toward === place.toward ? place : { ...place, station, ...(toward === undefined ? {} : { toward }) }
  }
  if (place.by === 'tapes') {
    const [first, second] = [now(place.first.station), now(place.second.station)]
    return first === place.first.station && second === place.second.station ? place
      : { ...place, first: { ...place.first, station: first }, second: { ...place.second, station: second } }
  }
  return place
}
