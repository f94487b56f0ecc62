import { veinSheetOf } from '../../vein/sheet/vein-sheet.ts'
import { notEnough } from '../../answer.ts'
import type { Graph } from '../graph.ts'

/** What the vein does, how thick it is and what it is made of. */
export const veinSheet = (g: Graph) => g.node('vein sheet', () => {
  const found = g.vein.value
  return notEnough(found) ? found : veinSheetOf({
    vein: found, survey: g.survey.value, entries: g.of('structure'), structures: g.at('structure'), widths: g.at('width'), samples: g.at('sample'), assume: g.assume.value, units: g.units.value,
  })
})
