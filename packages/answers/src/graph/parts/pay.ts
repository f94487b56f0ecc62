import { payOf } from '../../pay/pay.ts'
import { notEnough } from '../graph.ts'
import type { Graph } from '../graph.ts'

/** What a day's work would leave each of the crew. */
export const pay = (g: Graph) => g.node('pay', () => {
  const found = g.part('grade')
  return notEnough(found) ? found : payOf({
    grade: found, work: g.of('work'), costs: g.of('cost'), prices: g.of('price'), mine: g.mine.value, assume: g.assume.value, units: g.units.value,
  })
})
