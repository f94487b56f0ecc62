import type { PlacedEntry } from '../shapes.ts'
import type { NearBy } from './shapes.ts'
import { apart } from './ways.ts'

/** Entries that lie within so many metres of a placed one, nearest first; itself left out. */
export const nearTo = (one: PlacedEntry, all: readonly PlacedEntry[], reach: number): readonly NearBy[] =>
  all.flatMap((other) => {
    const metres = apart(one.point, other.point)
    return other.entry !== one.entry && metres <= reach ? [{ entry: other.entry, kind: other.kind, title: other.title, tag: other.tag, metres }] : []
  }).sort((a, b) => a.metres - b.metres)
