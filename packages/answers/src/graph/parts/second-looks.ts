import { placedKinds } from '../../places/placed-entries.ts'
import { oddControls } from '../../second-look/control-samples.ts'
import { disagreeingLooks } from '../../second-look/disagreeing-looks.ts'
import { oddSwaps } from '../../second-look/odd-swaps.ts'
import { oddMasses } from '../../second-look/odd-masses.ts'
import { oddPlaces } from '../../second-look/odd-places.ts'
import { oddVein } from '../../second-look/odd-vein.ts'
import { oddWidths, widthsInTheVein } from '../../second-look/odd-widths.ts'
import { unknownAssumptions } from '../../second-look/unknown-assumptions.ts'
import type { SecondLook } from '../../second-look/second-look.ts'
import { notEnough } from '../../answer.ts'
import type { Graph } from '../graph.ts'

/** What does not fit the rest and wants looking at again. */
export const secondLooks = (g: Graph) => g.node('second looks', (): readonly SecondLook[] => {
  const [found, drawn] = [g.vein.value, g.workings.value]
  const byId = new Map([...g.of('width'), ...g.of('sample')].map(entry => [entry.id, entry]))
  return [
    ...(notEnough(drawn) ? [] : drawn.suspects.map((s): SecondLook => ({
      sort: 'survey', sentence: `${s.sentence.replace(/^./, c => c.toUpperCase())}.`, entries: [s.entry], times: s.times,
      todo: 'Shoot it again, or leave the reading out of the adjustment and say why.',
    }))),
    ...oddControls({ samples: g.of('sample'), assays: g.of('assay'), standards: g.of('standard') }),
    ...oddPlaces(placedKinds.flatMap(g.of), g.stations.value),
    ...(notEnough(found) ? [] : [...oddVein(found), ...oddWidths(found.at.widths, byId)]),
    ...widthsInTheVein([...g.of('width'), ...g.of('sample')]), ...oddMasses(g.of('sample')), ...unknownAssumptions(g.of('assumption')), ...disagreeingLooks(g.looks.value.looks), ...oddSwaps(g.swaps.value.found),
  ]
})
