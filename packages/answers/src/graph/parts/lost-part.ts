import { lostPartOf } from '../../vein/lost-part.ts'
import { notEnough } from '../../answer.ts'
import type { Graph } from '../graph.ts'

/** Where the vein goes on past the fault. */
export const lostPart = (g: Graph) => g.node('lost part', () => {
  const found = g.vein.value
  return notEnough(found) ? found : lostPartOf({
    vein: found, survey: g.survey.value, structures: g.at('structure'), widths: g.at('width'), headings: g.headings.value, assume: g.assume.value, units: g.units.value,
  })
})
