import { associationsOf } from '../../associations/associations.ts'
import { marksOf } from '../../associations/marks-of.ts'
import { apart } from '../../finds/ways.ts'
import { bagOf } from '../../lab/looks.ts'
import { numberOf, textOf } from '../../read.ts'
import { offFault } from '../../vein/fault.ts'
import { notEnough } from '../../answer.ts'
import type { Graph } from '../graph.ts'

/** Samples cut from the wall; muck and waste tell of no place. */
const inPlace = ['channel', 'chip', 'panel']
/** A signal this near to a bag was heard of the rock it was cut from, metres. */
const hearing = 1.5

/** What goes with gold. */
export const associations = (g: Graph) => g.node('associations', () => {
  const found = g.vein.value, vein = notEnough(found) ? undefined : found, beliefs = g.beliefs.value
  const widths = new Map((vein?.at.widths ?? []).map(w => [w.entry, w.width])), signals = g.at('target')
  const ordinary = g.at('sample').filter(({ entry }) => inPlace.includes(textOf(entry, 'method') ?? '') && (textOf(entry, 'role') ?? 'ordinary') === 'ordinary')
  const bags = ordinary.flatMap((sited) => {
    const belief = beliefs.get(bagOf(sited.entry))
    if (!belief) return []
    const near = signals.filter(s => apart(s.located.point, sited.located.point) <= hearing).flatMap(s => numberOf(s.entry, 'strength') ?? [])
    return [{
      entry: sited.entry.id, gold: belief.below ? [-Infinity, Math.log(belief.high)] as const : [belief.logMean, belief.logMean] as const,
      marks: marksOf(sited.entry), width: widths.get(sited.entry.id), fromFault: vein?.fault && Math.abs(offFault(vein.fault, sited)),
      signal: signals.length === 0 ? undefined : Math.max(0, ...near),
    }]
  })
  return associationsOf(bags, g.units.value)
})
