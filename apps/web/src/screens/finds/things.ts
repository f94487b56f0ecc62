import type { FindAt, Finds, Workings } from '@lodebook/answers'
import type { Enu } from '@lodebook/reckon'
import type { Thing } from '../../drawing/drawing.tsx'
import type { SymbolName } from '../../drawing/symbols.tsx'

/** A mark of the sheet with its place in the mine. */
export interface Marked { readonly at: Enu, readonly kind: ShownKind, readonly thing: Omit<Thing, 'at'> }

export const shownKinds = ['open signals', 'signals that were gold', 'other signals', 'samples', 'relics', 'photos'] as const
export type ShownKind = typeof shownKinds[number]

/** Which switch of the legend a find goes by. */
function kindOf(find: FindAt, open: ReadonlySet<string>): ShownKind | undefined {
  switch (find.kind) {
    case 'target': return open.has(find.entry) ? 'open signals' : find.tag === 'gold' ? 'signals that were gold' : 'other signals'
    case 'sample': return 'samples'
    case 'relic': return 'relics'
    case 'photo': return 'photos'
    default: return undefined
  }
}

export const symbolFor: Readonly<Record<ShownKind, SymbolName>> = {
  'open signals': 'target', 'signals that were gold': 'target-gold', 'other signals': 'target-scrap', samples: 'sample', relics: 'relic', photos: 'other',
}

const weight: Readonly<Record<ShownKind, number>> = { 'open signals': 30, 'signals that were gold': 25, 'other signals': 5, samples: 12, relics: 8, photos: 6 }

/** Finds as marks, and stations to walk by. What is to be followed up is drawn last, so that it lies on top. */
export function markedFinds(finds: Finds, workings: Workings): readonly Marked[] {
  const open = new Set(finds.open), story = new Map(finds.targets.map(t => [t.entry, t]))
  const stations = workings.stations.map(s => ({ id: `station:${s.name}`, at: s.point, label: s.name }))
  const marks = finds.finds.flatMap((find): Marked[] => {
    const kind = kindOf(find, open), target = story.get(find.entry)
    if (!kind || !find.point) return []
    const label = target ? target.mark : kind === 'samples' ? find.title.replace(/^Sample /, '') : ''
    return [{ at: find.point, kind, thing: {
      id: `find:${find.entry}`, symbol: symbolFor[kind], label, weight: weight[kind], labelFrom: kind === 'open signals' ? 13 : 18, soft: (find.doubt ?? 0) > 1.5,
      says: [target ? `Target ${target.mark}` : find.title, find.tag, target?.strength === undefined ? '' : `heard ${target.strength} of 10`, find.where].filter(Boolean).join(', '),
    } }]
  })
  const order = (m: Marked) => m.kind === 'open signals' ? 1 : 0
  return [
    ...stations.map(({ id, at, label }): Marked => ({ at, kind: 'open signals', thing: { id, symbol: 'station', label, weight: 10, labelFrom: 9, says: `Station ${label}` } })),
    ...marks.sort((a, b) => order(a) - order(b)),
  ]
}
