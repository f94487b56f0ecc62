import type { Entry } from '@lodebook/book'
import { textOf, valueOf, wordsOf } from '../read.ts'
import type { GoingInAt } from './shapes.ts'

/** Hours after the time due at which help is called for, where nothing is written. Common practice, no source. */
export const usualCallAfter = 0.5

/** Goings in as written, latest first. */
export const goingsOf = (entries: readonly Entry[]): readonly GoingInAt[] => entries.flatMap((entry): GoingInAt[] => {
  const began = textOf(entry, 'in'), due = textOf(entry, 'due')
  if (began === undefined || due === undefined) return []
  return [{
    entry: entry.id, people: wordsOf(entry, 'people'), in: began, due, out: textOf(entry, 'out'), outside: textOf(entry, 'outside'), reach: textOf(entry, 'reach'), going: textOf(entry, 'going'),
    call: textOf(entry, 'call'), callAfter: valueOf(entry, 'callAfter') ?? usualCallAfter, heard: textOf(entry, 'heard'), heardBy: textOf(entry, 'heardBy'), called: textOf(entry, 'called'),
  }]
}).sort((a, b) => Date.parse(b.in) - Date.parse(a.in))
