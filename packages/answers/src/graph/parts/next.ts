import { nextOf } from '../../next/next.ts'
import { notEnough } from '../../answer.ts'
import type { Graph } from '../graph.ts'
import { payBasisNode } from './pay.ts'

/** Where the next hour of work, or the next assay fee, does most good. */
export const next = (g: Graph) => {
  const pay = payBasisNode(g)
  return g.node('next', () => {
    const basis = pay.value, grade = g.part('grade'), vein = g.vein.value
    if (notEnough(grade)) return grade
    if (notEnough(basis)) return basis
    if (notEnough(vein)) return vein
    return nextOf({ basis, grade, vein: vein.at, headings: g.headings.value, assays: g.of('assay'), costs: g.of('cost'), assume: g.assume.value, units: g.units.value })
  })
}
