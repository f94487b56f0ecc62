import { breathingOf } from '../../today/breathing.ts'
import { wayIn } from '../../today/way-in.ts'
import type { Graph } from '../graph.ts'

/** How the workings get their air. */
export const breathing = (g: Graph) => g.node('breathing', () => breathingOf({
  survey: g.survey.value, stations: g.stations.value, way: wayIn(g.survey.value, g.headings.value), air: g.of('air'), airAt: g.placings.get('air')!.value.at,
  openings: g.of('opening'), outside: g.of('outside'), fans: g.of('fan'), mine: g.mine.value, assume: g.assume.value, units: g.units.value,
}))
