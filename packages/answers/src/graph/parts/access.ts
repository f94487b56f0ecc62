import { accessOf } from '../../access/index.ts'
import { notEnough } from '../../answer.ts'
import type { Graph } from '../graph.ts'

/** What it takes to get in and out properly. */
export const access = (g: Graph) => g.node('access', () => {
  const drawn = g.workings.value
  return accessOf({
    jobs: g.of('digging'), sections: g.of('section'), spots: g.of('spot'), loads: g.of('load'), air: g.of('air'),
    ground: g.at('ground').map(({ entry, located }) => ({ entry, point: located.point })),
    headings: notEnough(drawn) ? [] : g.headings.value, context: g.context.value, assume: g.assume.value, units: g.units.value,
  })
})
