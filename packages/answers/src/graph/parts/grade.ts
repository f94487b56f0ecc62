import { gradeOf } from '../../grade/grade.ts'
import { notEnough } from '../graph.ts'
import type { Graph } from '../graph.ts'

/** How much gold, where, and how sure. */
export const grade = (g: Graph) => g.node('grade', () => {
  const found = g.vein.value
  if (notEnough(found)) return found
  const places = g.placings.get('sample')!.value.at
  return gradeOf({
    vein: found, beliefs: g.beliefs.value, assume: g.assume.value, units: g.units.value,
    samples: g.of('sample').map(entry => ({ entry, sited: places.has(entry.id) ? { entry, located: places.get(entry.id)! } : undefined })),
  })
})
