import { openingsOf } from '../../sheet/openings.ts'
import { wallHits } from '../../sheet/wall-hits.ts'
import { byName } from '../../survey/shots-of.ts'
import { notEnough } from '../../answer.ts'
import type { Graph } from '../graph.ts'

/** How much room there is: volumes of headings and stopes, and cross sections. */
export const openings = (g: Graph) => g.node('openings', () => {
  const workings = g.part('workings'), vein = g.part('vein')
  if (notEnough(workings)) return workings
  return openingsOf({
    workings, stations: g.stations.value, hits: wallHits(g.of('wall-shot'), byName(g.of('instrument')), g.survey.value), vein: notEnough(vein) ? undefined : vein,
    widths: g.of('width'), minimumWidth: g.assume.value('minimum width'), units: g.units.value,
  })
})
