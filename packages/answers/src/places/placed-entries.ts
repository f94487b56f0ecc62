import type { Entry } from '@lodebook/book'
import { entryTitle } from '../entry-title.ts'
import { placeOf, textOf } from '../read.ts'
import type { NotPlaced, PlacedEntry } from '../shapes.ts'
import { isLocated, locate } from './place-in-space.ts'
import type { Located, PlaceContext } from './place-in-space.ts'

/** Which word of an entry tells a drawing how to mark it. */
const tagField: Readonly<Record<string, string>> = { sample: 'role', target: 'outcome', structure: 'feature', hazard: 'sort', ground: 'found', relic: 'item', air: 'meter', width: 'vein' }

/** Kinds that are drawn where they were found, in the order in which a drawing lists them. */
export const placedKinds = ['sample', 'target', 'structure', 'width', 'hazard', 'ground', 'air', 'relic', 'photo', 'density'] as const

/** Blanks and standards come out of a jar, not out of the ground. */
const bornWithoutPlace = new Set(['blank', 'standard'])

export interface Placing {
  readonly placed: readonly PlacedEntry[]
  readonly notPlaced: readonly NotPlaced[]
  readonly at: ReadonlyMap<string, Located>
}

/** Puts entries of one kind where they say they are; those that can't be put anywhere are listed with the reason. */
export function placing(entries: readonly Entry[], context: PlaceContext): Placing {
  const placed: PlacedEntry[] = []
  const notPlaced: NotPlaced[] = []
  const at = new Map<string, Located>()
  for (const entry of entries) {
    const title = entryTitle(entry)
    const found = locate(placeOf(entry), context)
    if (!isLocated(found)) {
      if (bornWithoutPlace.has(textOf(entry, 'role') ?? '')) continue
      notPlaced.push({ entry: entry.id, kind: entry.kind, title, why: found.why })
      continue
    }
    at.set(entry.id, found)
    const tag = tagField[entry.kind]
    placed.push({ entry: entry.id, kind: entry.kind, title, point: found.point, sigma: found.sigma, how: found.how, tag: (tag && textOf(entry, tag)) || '' })
  }
  return { placed, notPlaced, at }
}
