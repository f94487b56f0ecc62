import { payBasis } from '../../pay/basis.ts'
import type { PayBasis } from '../../pay/basis.ts'
import { payOf } from '../../pay/pay.ts'
import type { NotEnough } from '../../answer.ts'
import { placeOnVein } from '../../pay/place-on-vein.ts'
import type { ReadonlySignal } from '@preact/signals-core'
import { notEnough } from '../../answer.ts'
import type { Graph } from '../graph.ts'

const made = new WeakMap<Graph, ReadonlySignal<PayBasis | NotEnough>>()

/** The options with their outcomes: what pay, and what it is worth to know more, both rest on. One node a graph. */
export function payBasisNode(g: Graph): ReadonlySignal<PayBasis | NotEnough> {
  const known = made.get(g) ?? g.node('pay basis', () => {
    const grade = g.part('grade'), vein = g.vein.value
    if (notEnough(grade)) return grade
    if (notEnough(vein)) return vein
    const options = g.of('option')
    return payBasis({
      grade, options, work: g.of('work'), costs: g.of('cost'), prices: g.of('price'), pans: g.of('pan'), samples: g.of('sample'), beliefs: g.beliefs.value,
      lostPart: options.some(o => o.fields.towards === 'the lost part') ? g.part('lostPart') : { notEnough: true, sentence: '', wanted: [], cautions: [] },
      placeOnVein: placeOnVein(g.context.value, vein.frame), mine: g.mine.value, assume: g.assume.value, units: g.units.value,
    })
  })
  made.set(g, known)
  return known
}

/** What a day's work would leave each of the crew, option by option. */
export const pay = (g: Graph) => {
  const basis = payBasisNode(g)
  return g.node('pay', () => {
    const grade = g.part('grade')
    return notEnough(grade) ? grade : payOf({ grade, assume: g.assume.value, units: g.units.value }, basis.value)
  })
}
